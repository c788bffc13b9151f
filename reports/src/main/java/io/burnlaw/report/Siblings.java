package io.burnlaw.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** What lies beside a folder while it is replaced: the new one that is made, and the old one that was renamed aside. */
final class Siblings {

    static final String MAKING = ".making-";
    static final String REPLACED = ".replaced-";

    /** A file name may have 255 bytes on the usual file systems; the rest is for what siblings add. */
    private static final int LONGEST_LABEL = 180;

    private Siblings() {}

    static Path sibling(Path place, String role) {
        String random = UUID.randomUUID().toString().replace("-", "").substring(0, 16);
        return place.resolveSibling("." + label(place) + role + random);
    }

    static String label(Path place) {
        String name = place.getFileName().toString();
        return name.getBytes(StandardCharsets.UTF_8).length <= LONGEST_LABEL
                ? name
                : "burnlaw-"
                        + HexFormat.of()
                                .formatHex(OwnFiles.sha256().digest(name.getBytes(StandardCharsets.UTF_8)), 0, 16);
    }

    static List<Path> siblings(Path place, String role) throws IOException {
        Path parent = place.getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            return List.of();
        }
        String start = "." + label(place) + role;
        try (Stream<Path> all = Files.list(parent)) {
            return all.filter(path -> path.getFileName().toString().startsWith(start))
                    .sorted()
                    .toList();
        }
    }

    /** Its list goes last: as long as it is there, it says what in a half-deleted folder was ours. */
    static void deleteIfPossible(Path folder, OwnFolder.Kind kind) {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Path list = folder.resolve(kind.list());
        try (Stream<Path> all = Files.walk(folder)) {
            List<Path> order = all.sorted(Comparator.reverseOrder())
                    .filter(path -> !path.equals(list) && !path.equals(folder))
                    .toList();
            for (Path each : order) {
                delete(each);
            }
            Files.deleteIfExists(list);
            delete(folder);
        } catch (IOException | UncheckedIOException stays) {
            // what is new is in its place; the next run tries again
        }
    }

    private static void delete(Path path) throws IOException {
        try {
            Files.delete(path);
        } catch (AccessDeniedException closed) {
            // a folder that may not be written keeps what is in it
            Files.setPosixFilePermissions(path.getParent(), PosixFilePermissions.fromString("rwx------"));
            Files.delete(path);
        }
    }
}
