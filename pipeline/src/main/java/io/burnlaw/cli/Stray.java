package io.burnlaw.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Files and folders that people name where a campaign folder is wanted, and where they lead. */
final class Stray {

    private static final Pattern RECORD = Pattern.compile("(?i).*\\.(csv|tsv|txt|dat|log|xlsx|mat)(\\.gz)?");
    private static final Pattern PACKED = Pattern.compile("(?i).*\\.(zip|tar|tgz|tar\\.gz|7z|rar)");
    private static final List<String> TABLES = List.of("firings.csv", "firings.xlsx", "points.csv", "strands.csv");

    private Stray() {}

    /** Whether the word names something that is there. */
    static boolean isThere(String word) {
        try {
            return !word.startsWith("-")
                    && Files.exists(Path.of(word))
                    && (word.matches(".*[./\\\\].*") || Files.exists(Path.of(word, "campaign.yaml")));
        } catch (InvalidPathException noPath) {
            return false;
        }
    }

    /** Whether the word names a logger's file. */
    static boolean isRecord(String word) {
        return Files.isRegularFile(Path.of(word)) && RECORD.matcher(word).matches() && !isTable(Path.of(word));
    }

    private static boolean isTable(Path file) {
        return file.getFileName() != null && TABLES.contains(file.getFileName().toString());
    }

    /**
     * What to do where a campaign folder is wanted and this is none.
     *
     * @return a sentence with a command; empty where it is a folder with a campaign.yaml, or that file
     */
    static Optional<String> hint(Path given) {
        String name = String.valueOf(given.getFileName());
        if (Files.isRegularFile(given) && !name.equals("campaign.yaml")) {
            Path parent = given.toAbsolutePath().getParent();
            if (PACKED.matcher(name).matches()) {
                return Optional.of("this is a packed file: unpack it, and name the folder");
            }
            if (isTable(given) && parent != null) {
                return Optional.of(
                        Files.exists(parent.resolve("campaign.yaml"))
                                ? "this is a table of a campaign; name its folder"
                                : "this is a table, but its folder has no campaign.yaml: burnlaw new FOLDER makes one");
            }
            if (RECORD.matcher(name).matches()) {
                return Optional.of("this is one file, not a campaign: try   burnlaw record " + given);
            }
        }
        if (Files.isDirectory(given) && !Files.exists(given.resolve("campaign.yaml"), LinkOption.NOFOLLOW_LINKS)) {
            return folder(given);
        }
        return Optional.empty();
    }

    private static Optional<String> folder(Path given) {
        try (Stream<Path> inside = Files.list(given)) {
            List<Path> files = inside.limit(1000).sorted().toList();
            if (files.isEmpty()) {
                return Optional.of("this folder is empty: try   burnlaw new " + given);
            }
            if (files.stream().anyMatch(file -> isTable(file))) {
                return Optional.empty();
            }
            boolean records = files.stream().anyMatch(file -> isRecord(file.toString()));
            return Optional.of(
                    records
                            ? "this folder has records, but no campaign.yaml: try   burnlaw new my-campaign --from "
                                    + given
                            : "there is no campaign.yaml in this folder: try   burnlaw new my-campaign");
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }
}
