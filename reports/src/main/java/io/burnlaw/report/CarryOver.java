package io.burnlaw.report;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Copies what its owner put into the old folder into the new one. */
final class CarryOver extends SimpleFileVisitor<Path> {

    private final Path named;
    private final Path place;
    private final OwnFolder.Kind kind;
    private final Path making;
    private final Map<String, String> written;
    private final Optional<Map<String, String>> listed;
    private boolean same;

    /**
     * Between two folders.
     *
     * @param named   as the user named the old one
     * @param written paths in it and their checksums
     * @throws IOException if the list of the old one cannot be read
     */
    CarryOver(Path named, Path place, OwnFolder.Kind kind, Path making, Map<String, String> written)
            throws IOException {
        this.named = named;
        this.place = place;
        this.kind = kind;
        this.making = making;
        this.written = written;
        this.listed = OwnFiles.list(place, kind);
    }

    void run() throws IOException {
        Files.walkFileTree(place, this);
        if (kind == OwnFolder.Kind.SIMULATION && listed.isEmpty() && !same) {
            try (Stream<Path> entries = Files.list(place)) {
                if (entries.findAny().isPresent()) {
                    throw new Refused(named
                            + ": the folder has other files; nothing was written. Name a new folder, or one that an"
                            + " earlier simulate made.");
                }
            }
        }
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
        String path = OwnFiles.relative(place, file);
        if (path.equals(kind.list()) || OwnFiles.ours(listed, path, file, attributes)) {
            return FileVisitResult.CONTINUE;
        }
        Path to = making.resolve(path);
        if (written.containsKey(path)) {
            if (attributes.isRegularFile() && written.get(path).equals(OwnFiles.hash(file))) {
                same = true;
                return FileVisitResult.CONTINUE;
            }
            if (kind == OwnFolder.Kind.SIMULATION) {
                throw new Refused(named + ": " + path
                        + " is not what an earlier simulate wrote there; nothing was written. Move it away, or name"
                        + " another folder.");
            }
            to = freeName(to);
        }
        Files.createDirectories(to.getParent());
        keep(file, to);
        return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException e) throws IOException {
        if (e != null) {
            throw e;
        }
        Path to = making.resolve(OwnFiles.relative(place, folder));
        try (Stream<Path> entries = Files.list(folder)) {
            if (entries.findAny().isEmpty()) {
                Files.createDirectories(to);
            }
        }
        if (Files.exists(to)) {
            likeOld(folder, to);
        }
        return FileVisitResult.CONTINUE;
    }

    private void likeOld(Path folder, Path to) throws IOException {
        try {
            Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(folder));
        } catch (UnsupportedOperationException notPosix) {
            return;
        }
        if (!folder.equals(place)) {
            return;
        }
        if (!Files.isWritable(to)) {
            // of a folder that its owner closed: the list has still to be written
            Files.setPosixFilePermissions(to, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    private static Path freeName(Path taken) {
        for (int number = 1; ; number++) {
            Path free = taken.resolveSibling(taken.getFileName() + ".kept-" + number);
            if (!Files.exists(free, LinkOption.NOFOLLOW_LINKS)) {
                return free;
            }
        }
    }

    private static void keep(Path from, Path to) throws IOException {
        try {
            if (!Files.isSymbolicLink(from)) {
                Files.createLink(to, from);
                return;
            }
        } catch (IOException | UnsupportedOperationException noLinks) {
            // then as a copy
        }
        Files.copy(from, to, LinkOption.NOFOLLOW_LINKS, StandardCopyOption.COPY_ATTRIBUTES);
    }

    /** The folder is not for us to write; the message is a sentence. */
    static final class Refused extends IOException {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }
}
