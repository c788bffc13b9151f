package io.burnlaw.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Replaces a folder as a whole.
 *
 * <p>The new content is made in a sibling folder, the old folder is renamed aside, the new one renamed into its place,
 * and the old one deleted. A process that is killed leaves one of these:
 * <ul>
 * <li>before the first rename: the old folder, and a half-made sibling that the next run deletes;
 * <li>between the two renames: no folder of that name, the old one whole beside it; the next run puts it back first;
 * <li>after the second: the new folder, and a sibling that the next run deletes.
 * </ul>
 * Never is the folder a mixture. Java cannot ask Linux to exchange two names in one step, so the gap between the two
 * renames remains; no file is written in it. Siblings carry the number of their process: those of a process that still
 * runs are left alone.
 */
final class ReportFolder {

    private static final String MAKING = ".making-";
    private static final String REPLACED = ".replaced-";

    /** What a report folder holds by itself; anything else was put there by its owner and is carried over. */
    private static final Set<String> OWN = Set.of(
            "index.html",
            "burnlaw.json",
            "rates.csv",
            "rates.csv-metadata.json",
            "laws.csv",
            "laws.csv-metadata.json",
            "firings",
            "charts");

    /** Writes the new content. */
    interface Content {

        /**
         * Writes it.
         *
         * @param fresh an empty folder
         * @throws IOException if it cannot
         */
        void write(Path fresh) throws IOException;
    }

    private ReportFolder() {}

    static void replace(Path folder, Content content) throws IOException {
        try {
            Path place = Files.isDirectory(folder)
                    ? folder.toRealPath()
                    : folder.toAbsolutePath().normalize();
            Path parent = place.getParent();
            if (parent == null) {
                throw new IOException(folder + ": a report cannot take the place of a whole file system");
            }
            Files.createDirectories(parent);
            recover(place);
            refuseForeign(folder, place);
            Path making = sibling(place, MAKING, ProcessHandle.current().pid());
            delete(making);
            Files.createDirectory(making);
            try {
                fill(folder, content, place, making);
                swap(place, making);
            } finally {
                delete(making);
            }
        } catch (FileSystemException e) {
            throw new IOException(folder + ": the report cannot be written: " + reason(e), e);
        }
    }

    private static void fill(Path folder, Content content, Path place, Path making) throws IOException {
        try {
            content.write(making);
            carryOver(place, making);
        } catch (FileSystemException e) {
            throw e;
        } catch (IOException e) {
            // a disk that fills up while a file is written says so without the file
            throw new IOException(folder + ": the report cannot be written: " + e.getMessage(), e);
        }
    }

    /** Puts back or clears away what a killed run left beside the folder. */
    static void recover(Path place) throws IOException {
        for (Path replaced : leftovers(place, REPLACED)) {
            if (Files.exists(place)) {
                delete(replaced);
            } else {
                Files.move(replaced, place, StandardCopyOption.ATOMIC_MOVE);
            }
        }
        for (Path making : leftovers(place, MAKING)) {
            delete(making);
        }
    }

    private static void swap(Path place, Path making) throws IOException {
        Path replaced = sibling(place, REPLACED, ProcessHandle.current().pid());
        boolean there = Files.exists(place);
        if (there) {
            delete(replaced);
            Files.move(place, replaced, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            Files.move(making, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (there) {
                Files.move(replaced, place, StandardCopyOption.ATOMIC_MOVE);
            }
            throw e;
        }
        delete(replaced);
    }

    /** A folder that never held a report may be somebody's home: it is not for us to replace. */
    private static void refuseForeign(Path named, Path place) throws IOException {
        if (Files.exists(place) && !Files.isDirectory(place)) {
            throw new IOException(named + ": is a file, and a report is a folder; name another place for it");
        }
        if (Files.isDirectory(place)
                && !Files.exists(place.resolve("burnlaw.json"))
                && !list(place).isEmpty()) {
            throw new IOException(
                    named + ": the folder holds other things and no report; name a new or an empty folder");
        }
    }

    private static void carryOver(Path place, Path making) throws IOException {
        if (!Files.isDirectory(place)) {
            return;
        }
        for (Path entry : list(place)) {
            if (!OWN.contains(entry.getFileName().toString())) {
                copy(entry, making.resolve(entry.getFileName()));
            }
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path each : all.toList()) {
                Files.copy(
                        each,
                        to.resolve(from.relativize(each).toString()),
                        LinkOption.NOFOLLOW_LINKS,
                        StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
    }

    private static List<Path> leftovers(Path place, String kind) throws IOException {
        String start = sibling(place, kind, 0).getFileName().toString();
        String prefix = start.substring(0, start.length() - 1);
        try (Stream<Path> siblings = Files.list(place.getParent())) {
            return siblings.filter(path -> path.getFileName().toString().startsWith(prefix))
                    .filter(path -> abandoned(path.getFileName().toString().substring(prefix.length())))
                    .sorted()
                    .toList();
        }
    }

    private static boolean abandoned(String process) {
        return process.matches("[0-9]{1,18}")
                && ProcessHandle.of(Long.parseLong(process)).isEmpty();
    }

    private static Path sibling(Path place, String kind, long process) {
        return place.resolveSibling("." + place.getFileName() + kind + process);
    }

    private static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.sorted().toList();
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    private static String reason(FileSystemException e) {
        if (e instanceof AccessDeniedException) {
            return "no right to write " + e.getFile();
        }
        if (e instanceof FileAlreadyExistsException) {
            return e.getFile() + " is a file where a folder is needed";
        }
        if (e instanceof NoSuchFileException) {
            return e.getFile() + " cannot be made there";
        }
        return e.getReason() == null ? String.valueOf(e.getMessage()) : e.getFile() + ": " + e.getReason();
    }
}
