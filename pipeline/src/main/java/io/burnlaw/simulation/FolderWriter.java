package io.burnlaw.simulation;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Writes a made campaign as a whole: beside its place first, then into it. */
public final class FolderWriter {

    private FolderWriter() {}

    /**
     * Whether a folder is free, or holds an earlier campaign of a scenario.
     *
     * @param folder where to write
     * @return false where it holds something else
     * @throws IOException if it cannot be looked at
     */
    public static boolean mayReplace(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return true;
        }
        if (!Files.isDirectory(folder)) {
            return false;
        }
        boolean ours = Files.exists(folder.resolve("truth.yaml")) || Files.exists(folder.resolve("scenario.yaml"));
        try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder)) {
            for (Path path : inside) {
                boolean traces = path.getFileName().toString().equals("traces");
                if (!ours || Files.isDirectory(path) && !traces) {
                    return false;
                }
            }
            return true;
        }
    }

    /**
     * Writes the campaign. An earlier one in the same place is replaced, with all of its traces; other files that lie
     * in the folder stay.
     *
     * @param campaign the files
     * @param folder   where to
     * @throws IOException if it cannot be written; the folder is then as it was
     */
    public static void write(MadeCampaign campaign, Path folder) throws IOException {
        Path target = folder.toAbsolutePath().normalize();
        Files.createDirectories(target.getParent());
        Path beside = Files.createTempDirectory(target.getParent(), "." + target.getFileName() + "-");
        try {
            Path made = beside.resolve("new");
            Files.createDirectory(made);
            keepOthers(target, made, campaign);
            for (Map.Entry<String, byte[]> file : campaign.files().entrySet()) {
                Path path = made.resolve(file.getKey());
                Files.createDirectories(path.getParent());
                Files.write(path, file.getValue());
            }
            Path old = beside.resolve("old");
            if (Files.exists(target)) {
                Files.move(target, old);
            }
            try {
                Files.move(made, target);
            } catch (IOException failed) {
                if (Files.exists(old)) {
                    Files.move(old, target);
                }
                throw failed;
            }
        } finally {
            delete(beside);
        }
    }

    private static void keepOthers(Path target, Path made, MadeCampaign campaign) throws IOException {
        if (!Files.isDirectory(target)) {
            return;
        }
        List<String> replaced = List.of("campaign.yaml", "firings.csv", "points.csv", "strands.csv", "truth.yaml");
        try (DirectoryStream<Path> inside = Files.newDirectoryStream(target)) {
            for (Path path : inside) {
                String name = path.getFileName().toString();
                boolean ours = replaced.contains(name) || campaign.files().containsKey(name);
                if (!ours && Files.isRegularFile(path)) {
                    Files.copy(path, made.resolve(name), StandardCopyOption.COPY_ATTRIBUTES);
                }
            }
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
