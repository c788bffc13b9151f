package io.burnlaw.report;

import io.burnlaw.report.OwnFolder.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Why a folder must not be written as a whole: what is there is not ours, or could not be kept.
 *
 * @param named as the user named it
 * @param place where it really is
 * @param kind  of what shall be written there
 */
record FolderRefusal(Path named, Path place, Kind kind) {

    private static final Pattern FORMAT = Pattern.compile("\"format\"\\s*:\\s*\"burnlaw-characterization/");

    /** {@return a clause; empty where it may be written} */
    Optional<String> why() throws IOException {
        if (Files.isSymbolicLink(named) && !Files.exists(named)) {
            return Optional.of("this is a link to a missing folder; make that folder, or name another");
        }
        if (!Files.exists(place)) {
            return Optional.empty();
        }
        if (!Files.isDirectory(place)) {
            return Optional.of("this is a file, not a folder; name another place");
        }
        if (mountPoint(place)) {
            return Optional.of(
                    "this is a mount point, which cannot be replaced as a whole; name a folder in it, such as "
                            + named.resolve("report"));
        }
        List<Path> inside;
        try (Stream<Path> entries = Files.list(place)) {
            inside = entries.toList();
        }
        if (inside.isEmpty()) {
            return Optional.empty();
        }
        if (kind == Kind.REPORT && !Files.exists(place.resolve(kind.list())) && !holdsDocument()) {
            return Optional.of(
                    "the folder has other files, but no report (no burnlaw.json of a run); it was not changed;"
                            + " name a new or an empty folder");
        }
        return unmovable();
    }

    private boolean holdsDocument() {
        try (InputStream in = Files.newInputStream(place.resolve("burnlaw.json"))) {
            return FORMAT.matcher(new String(in.readNBytes(1000), StandardCharsets.UTF_8))
                    .find();
        } catch (IOException none) {
            return false;
        }
    }

    /** What could not be carried over: pipes, sockets, devices, and folders that may not be read. */
    private Optional<String> unmovable() throws IOException {
        StringBuilder found = new StringBuilder();
        Files.walkFileTree(place, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                return attributes.isOther() ? stop(file, "is a pipe, a socket or a device") : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
                return stop(file, "may not be read");
            }

            private FileVisitResult stop(Path file, String what) {
                found.append("it contains ")
                        .append(place.relativize(file))
                        .append(", which ")
                        .append(what);
                return FileVisitResult.TERMINATE;
            }
        });
        return found.isEmpty()
                ? Optional.empty()
                : Optional.of(found + " and could not be kept; move it away, or name another folder");
    }

    /** As Linux lists them; elsewhere the renaming itself will say so. */
    private static boolean mountPoint(Path place) {
        try (Stream<String> mounts = Files.lines(Path.of("/proc/self/mountinfo"))) {
            return mounts.map(line -> line.split(" ", 6))
                    .anyMatch(fields ->
                            fields.length > 4 && fields[4].replace("\\040", " ").equals(place.toString()));
        } catch (IOException | UncheckedIOException notLinux) {
            return false;
        }
    }
}
