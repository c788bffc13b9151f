package io.burnlaw.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A folder that this program writes as a whole and may write again, without losing a file that it did not write.
 *
 * <p>A list of all that was written, with checksums, lies in the folder. Only a file that is in the list and unchanged is
 * ours; everything else is its owner's and is carried over into the new folder.
 *
 * <p>The new content is made in a sibling folder of a random name, the old folder is renamed aside, the new one renamed
 * into its place, and the old one deleted, all under a file lock. A process that is killed leaves one of these:
 * <ul>
 * <li>before the first rename: the old folder, and a half-made sibling that the next run deletes;
 * <li>between the two renames: no folder of that name, the old one whole beside it; whoever comes next puts it back;
 * <li>after the second: the new folder, and a sibling that the next run deletes, if nothing is lost with it.
 * </ul>
 * Never is the folder a mixture. Java cannot ask Linux to exchange two names in one step, so the gap between the two
 * renames remains; no file is written in it.
 */
public final class OwnFolder {

    private static final String MAKING = ".making-";
    private static final String REPLACED = ".replaced-";
    private static final String LOCK = ".lock";

    /** Where a test ends the process on purpose. */
    private static final String HALT = System.getProperty("burnlaw.halt", "");

    /** A file name may have 255 bytes on the usual file systems; the rest is for what siblings add. */
    private static final int LONGEST_LABEL = 180;

    private static final Pattern FORMAT = Pattern.compile("\"format\"\\s*:\\s*\"burnlaw-characterization/");

    /** What the folder is. */
    public enum Kind {
        /** A report. */
        REPORT(".burnlaw-report.sha256"),
        /** A campaign made from a scenario. */
        SIMULATION(".burnlaw-simulation.sha256");

        private final String list;

        Kind(String list) {
            this.list = list;
        }

        /** {@return the name of its list of files, in the form that sha256sum checks} */
        public String list() {
            return list;
        }
    }

    /** Takes the files of the folder, several at the same time from several threads. */
    @FunctionalInterface
    public interface Fresh {

        /**
         * Makes a file.
         *
         * @param path below the folder, with slashes
         * @return to be written and closed
         * @throws IOException if it cannot be made
         */
        OutputStream create(String path) throws IOException;
    }

    /** Writes the new content. */
    @FunctionalInterface
    public interface Content {

        /**
         * Writes it.
         *
         * @param fresh takes the files
         * @throws IOException if it cannot
         */
        void write(Fresh fresh) throws IOException;
    }

    private final Path named;
    private final Path place;
    private final Kind kind;

    private OwnFolder(Path named, Kind kind) throws IOException {
        this.named = named;
        this.kind = kind;
        this.place = place(named);
    }

    private static Path place(Path named) throws IOException {
        return Files.isDirectory(named)
                ? named.toRealPath()
                : named.toAbsolutePath().normalize();
    }

    /**
     * Writes the folder anew.
     *
     * @param folder  where; made if it is not there
     * @param kind    what it is
     * @param content of it
     * @throws IOException if it cannot be written or must not be replaced; its message is a sentence that can be shown,
     *                     and whatever was in the folder before is there unchanged
     */
    public static void replace(Path folder, Kind kind, Content content) throws IOException {
        try {
            new OwnFolder(folder, kind).replace(content);
        } catch (FileSystemException e) {
            throw new IOException(folder + ": the folder cannot be written: " + reason(e), e);
        }
    }

    /**
     * Why a folder must not be written, as far as it can be said before anything is made.
     *
     * @param folder named by the user
     * @param kind   of what shall be written there
     * @return a sentence; empty where it may be written
     */
    public static Optional<String> refusal(Path folder, Kind kind) {
        try {
            return new OwnFolder(folder, kind).refusal().map(why -> folder + ": " + why);
        } catch (AccessDeniedException e) {
            return Optional.of(folder + ": the folder may not be read; check its rights, or name another");
        } catch (FileSystemException e) {
            return Optional.of(folder + ": the folder cannot be used: " + reason(e));
        } catch (IOException e) {
            return Optional.of(folder + ": the folder cannot be used");
        }
    }

    /**
     * Puts a folder back that a killed run left renamed aside.
     *
     * @param folder that should be there; nothing happens if it is
     */
    @SuppressWarnings("try") // the lock is held and not used
    public static void putBack(Path folder) {
        try {
            Path place = place(folder);
            if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)
                    || siblings(place, REPLACED).isEmpty()) {
                return;
            }
            try (Lock lock = Lock.of(folder, place)) {
                putBackUnderLock(place);
            }
        } catch (IOException notNow) {
            // whoever wanted to read it says that it is not there
        }
    }

    private void replace(Content content) throws IOException {
        Path parent = place.getParent();
        if (parent == null) {
            throw new IOException(named + ": nothing can take the place of a whole file system");
        }
        Files.createDirectories(parent);
        try (Lock lock = Lock.of(named, place)) {
            putBackUnderLock(place);
            Optional<String> refusal = refusal();
            if (refusal.isPresent()) {
                throw new IOException(named + ": " + refusal.get());
            }
            if (lock.held()) {
                clearAway();
            }
            Path making = sibling(MAKING);
            Files.createDirectory(making);
            try {
                fill(content, making);
                swap(making);
            } finally {
                deleteIfPossible(making, kind);
            }
        }
    }

    private void fill(Content content, Path making) throws IOException {
        try {
            Map<String, String> written = new ConcurrentSkipListMap<>();
            content.write(path -> new Hashed(newFile(making.resolve(path)), path, written));
            if (Files.isDirectory(place)) {
                new CarryOver(making, written).run();
            }
            String list = written.entrySet().stream()
                    .map(each -> each.getValue() + "  " + each.getKey() + "\n")
                    .collect(Collectors.joining());
            Files.writeString(making.resolve(kind.list()), list);
        } catch (FileSystemException | Refused e) {
            throw e;
        } catch (IOException e) {
            // a disk that fills up while a file is written says so without the file
            throw new IOException(named + ": the folder cannot be written: " + e.getMessage(), e);
        }
    }

    /** Opens a file. Nearly always its folder is there already, and need not be asked for. */
    private static OutputStream newFile(Path file) throws IOException {
        try {
            return Files.newOutputStream(file);
        } catch (NoSuchFileException noFolder) {
            Files.createDirectories(file.getParent());
            return Files.newOutputStream(file);
        }
    }

    private void swap(Path making) throws IOException {
        Path replaced = sibling(REPLACED);
        boolean there = Files.exists(place);
        if (there) {
            haltAt("first-rename");
            Files.move(place, replaced, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            haltAt("between-renames");
            Files.move(making, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (there) {
                Files.move(replaced, place, StandardCopyOption.ATOMIC_MOVE);
            }
            throw e;
        }
        haltAt("second-rename");
        deleteIfPossible(replaced, kind);
    }

    private static void haltAt(String step) {
        if (HALT.equals(step)) {
            Runtime.getRuntime().halt(137);
        }
    }

    private Optional<String> refusal() throws IOException {
        if (Files.isSymbolicLink(named) && !Files.exists(named)) {
            return Optional.of("this is a link to a folder that is not there; make that folder, or name another");
        }
        if (!Files.exists(place)) {
            return Optional.empty();
        }
        if (!Files.isDirectory(place)) {
            return Optional.of("this is a file, and a folder is to be written; name another place for it");
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
                    "the folder holds other things and no report (no burnlaw.json of a run); it was left as it"
                            + " is; name a new or an empty folder");
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
                found.append(place.relativize(file)).append(" in it ").append(what);
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

    /** Copies what its owner put into the old folder into the new one. */
    private final class CarryOver extends SimpleFileVisitor<Path> {

        private final Path making;
        private final Map<String, String> written;
        private final Optional<Map<String, String>> listed;
        private boolean same;

        CarryOver(Path making, Map<String, String> written) throws IOException {
            this.making = making;
            this.written = written;
            this.listed = list(place, kind);
        }

        void run() throws IOException {
            Files.walkFileTree(place, this);
            if (kind == Kind.SIMULATION && listed.isEmpty() && !same) {
                try (Stream<Path> entries = Files.list(place)) {
                    if (entries.findAny().isPresent()) {
                        throw new Refused(named
                                + ": something else lies there; nothing was written. Name a new folder, or one that an"
                                + " earlier simulate made.");
                    }
                }
            }
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
            String path = relative(place, file);
            if (path.equals(kind.list()) || ours(listed, path, file, attributes)) {
                return FileVisitResult.CONTINUE;
            }
            Path to = making.resolve(path);
            if (written.containsKey(path)) {
                if (attributes.isRegularFile() && written.get(path).equals(hash(file))) {
                    same = true;
                    return FileVisitResult.CONTINUE;
                }
                if (kind == Kind.SIMULATION) {
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
            Path to = making.resolve(relative(place, folder));
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
    }

    /** Without a list nothing is known to be ours, and everything is kept. */
    private static boolean ours(
            Optional<Map<String, String>> listed, String path, Path file, BasicFileAttributes attributes)
            throws IOException {
        String hash = listed.map(files -> files.get(path)).orElse(null);
        return hash != null && attributes.isRegularFile() && hash.equals(hash(file));
    }

    private static Optional<Map<String, String>> list(Path folder, Kind kind) throws IOException {
        Path list = folder.resolve(kind.list());
        if (!Files.isRegularFile(list)) {
            return Optional.empty();
        }
        Map<String, String> files = new TreeMap<>();
        for (String line : new String(Files.readAllBytes(list), StandardCharsets.UTF_8).split("\n")) {
            if (line.length() > 66) {
                files.put(line.substring(66), line.substring(0, 64));
            }
        }
        return Optional.of(files);
    }

    private static void putBackUnderLock(Path place) throws IOException {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Optional<Path> latest = siblings(place, REPLACED).stream()
                .filter(Files::isDirectory)
                .max(Comparator.comparingLong(path -> path.toFile().lastModified()));
        if (latest.isPresent()) {
            Files.move(latest.get(), place, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /** Under the lock nobody else works here: what is left beside the folder was left by a run that was killed. */
    private void clearAway() throws IOException {
        for (Path making : siblings(place, MAKING)) {
            deleteIfPossible(making, kind);
        }
        for (Path replaced : siblings(place, REPLACED)) {
            if (nothingLostWith(replaced)) {
                deleteIfPossible(replaced, kind);
            }
        }
    }

    private boolean nothingLostWith(Path replaced) throws IOException {
        Optional<Map<String, String>> listed = list(replaced, kind);
        try (Stream<Path> all = Files.walk(replaced)) {
            for (Path file : all.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                String path = relative(replaced, file);
                BasicFileAttributes attributes =
                        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
                if (!path.equals(kind.list())
                        && !ours(listed, path, file, attributes)
                        && !(Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && isCarried(file, path))) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean isCarried(Path file, String path) throws IOException {
        for (String name : List.of(path, path + ".kept-1")) {
            Path carried = place.resolve(name);
            if (Files.isRegularFile(carried) && Files.mismatch(file, carried) < 0) {
                return true;
            }
        }
        return false;
    }

    private Path sibling(String role) {
        String random = UUID.randomUUID().toString().replace("-", "").substring(0, 16);
        return place.resolveSibling("." + label(place) + role + random);
    }

    private static String label(Path place) {
        String name = place.getFileName().toString();
        return name.getBytes(StandardCharsets.UTF_8).length <= LONGEST_LABEL
                ? name
                : "burnlaw-" + HexFormat.of().formatHex(sha256().digest(name.getBytes(StandardCharsets.UTF_8)), 0, 16);
    }

    private static List<Path> siblings(Path place, String role) throws IOException {
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

    private static String relative(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    private static String hash(Path file) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = Files.newInputStream(file);
                OutputStream to = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
            in.transferTo(to);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Its list goes last: as long as it is there, it says what in a half-deleted folder was ours. */
    private static void deleteIfPossible(Path folder, Kind kind) {
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
        return e.getReason() == null ? "it is " + e.getFile() : e.getFile() + ": " + e.getReason();
    }

    /** The folder is not for us to write; the message is a sentence. */
    private static final class Refused extends IOException {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }

    /** Writes into a file and takes its checksum. */
    private static final class Hashed extends OutputStream {

        private final DigestOutputStream out;
        private final String path;
        private final Map<String, String> into;

        Hashed(OutputStream file, String path, Map<String, String> into) {
            this.out = new DigestOutputStream(new BufferedOutputStream(file), sha256());
            this.path = path;
            this.into = into;
        }

        @Override
        public void write(int b) throws IOException {
            out.write(b);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            out.close();
            into.put(path, HexFormat.of().formatHex(out.getMessageDigest().digest()));
        }
    }

    /** One run at a time writes a folder, whatever machine, container or number it has. */
    private record Lock(FileChannel channel, Path file, boolean held) implements AutoCloseable {

        /** Of a lock file [bytes]; it is empty but for its last byte. */
        private static final long LARGEST = 1L << 20;

        static Lock of(Path named, Path place) throws IOException {
            Path file = place.resolveSibling("." + label(place) + LOCK);
            while (true) {
                FileChannel channel = FileChannel.open(
                        file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
                boolean locked;
                try {
                    locked = channel.tryLock() != null;
                } catch (OverlappingFileLockException ofThisProcess) {
                    locked = false;
                } catch (IOException noLocksHere) {
                    // such a file system has random names alone to keep two runs apart
                    return new Lock(channel, file, false);
                }
                if (!locked) {
                    channel.close();
                    throw new IOException(named
                            + ": another run is writing this folder at this moment; nothing was changed. Run again when"
                            + " it has ended.");
                }
                if (isStillThere(channel, file)) {
                    return new Lock(channel, file, true);
                }
                channel.close();
            }
        }

        /**
         * The run before may have deleted the file between our opening and our locking it. Told by a size of its own: to
         * read the file would open and close it once more, and by POSIX that gives up the lock.
         */
        private static boolean isStillThere(FileChannel channel, Path file) throws IOException {
            long size = ThreadLocalRandom.current().nextLong(1, LARGEST);
            try {
                channel.truncate(0);
                channel.write(ByteBuffer.wrap(new byte[] {1}), size - 1);
            } catch (IOException full) {
                // the files of the folder will say so
                return true;
            }
            try {
                return Files.size(file) == size;
            } catch (NoSuchFileException gone) {
                return false;
            }
        }

        @Override
        public void close() throws IOException {
            if (held) {
                Files.deleteIfExists(file);
            }
            channel.close();
        }
    }
}
