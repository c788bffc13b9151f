package io.burnlaw.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A folder that this program writes as a whole and may write again, without losing a file that it did not write.
 *
 * <p>The folder has a list of all files that were written, with checksums. Only a file that is in the list and
 * unchanged is replaced; every other file belongs to the user and is copied into the new folder.
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

    /** Where a test ends the process on purpose. */
    private static final String HALT = System.getProperty("burnlaw.halt", "");

    /** What the folder is. */
    public enum Kind {
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
     * @param folder where; made if it is not there
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
            return new FolderRefusal(folder, place(folder), kind).why().map(why -> folder + ": " + why);
        } catch (AccessDeniedException e) {
            return Optional.of(folder + ": there is no permission to read the folder; change that, or name another");
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
                    || Siblings.siblings(place, Siblings.REPLACED).isEmpty()) {
                return;
            }
            try (FolderLock lock = FolderLock.of(folder, place)) {
                putBackUnderLock(place);
            }
        } catch (IOException notNow) {
            // whoever wanted to read it says that it is not there
        }
    }

    private void replace(Content content) throws IOException {
        Path parent = place.getParent();
        if (parent == null) {
            throw new IOException(named + ": a whole file system cannot be replaced");
        }
        Files.createDirectories(parent);
        try (FolderLock lock = FolderLock.of(named, place)) {
            putBackUnderLock(place);
            Optional<String> refusal = new FolderRefusal(named, place, kind).why();
            if (refusal.isPresent()) {
                throw new IOException(named + ": " + refusal.get());
            }
            if (lock.held()) {
                clearAway();
            }
            Path making = Siblings.sibling(place, Siblings.MAKING);
            Files.createDirectory(making);
            try {
                fill(content, making);
                swap(making);
            } finally {
                Siblings.deleteIfPossible(making, kind);
            }
        }
    }

    private void fill(Content content, Path making) throws IOException {
        try {
            Map<String, String> written = new ConcurrentSkipListMap<>();
            content.write(path -> new OwnFiles.Hashed(newFile(making.resolve(path)), path, written));
            if (Files.isDirectory(place)) {
                new CarryOver(named, place, kind, making, written).run();
            }
            String list = written.entrySet().stream()
                    .map(each -> each.getValue() + "  " + each.getKey() + "\n")
                    .collect(Collectors.joining());
            Files.writeString(making.resolve(kind.list()), list);
        } catch (FileSystemException | CarryOver.Refused e) {
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
        Path replaced = Siblings.sibling(place, Siblings.REPLACED);
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
        Siblings.deleteIfPossible(replaced, kind);
    }

    private static void haltAt(String step) {
        if (HALT.equals(step)) {
            Runtime.getRuntime().halt(137);
        }
    }

    private static void putBackUnderLock(Path place) throws IOException {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Optional<Path> latest = Siblings.siblings(place, Siblings.REPLACED).stream()
                .filter(Files::isDirectory)
                .max(Comparator.comparingLong(path -> path.toFile().lastModified()));
        if (latest.isPresent()) {
            Files.move(latest.get(), place, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /** Under the lock nobody else works here: what is left beside the folder was left by a run that was killed. */
    private void clearAway() throws IOException {
        for (Path making : Siblings.siblings(place, Siblings.MAKING)) {
            Siblings.deleteIfPossible(making, kind);
        }
        for (Path replaced : Siblings.siblings(place, Siblings.REPLACED)) {
            if (nothingLostWith(replaced)) {
                Siblings.deleteIfPossible(replaced, kind);
            }
        }
    }

    private boolean nothingLostWith(Path replaced) throws IOException {
        Optional<Map<String, String>> listed = OwnFiles.list(replaced, kind);
        try (Stream<Path> all = Files.walk(replaced)) {
            for (Path file : all.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                String path = OwnFiles.relative(replaced, file);
                BasicFileAttributes attributes =
                        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
                if (!path.equals(kind.list())
                        && !OwnFiles.ours(listed, path, file, attributes)
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

    private static String reason(FileSystemException e) {
        if (e instanceof AccessDeniedException) {
            return "no permission to write " + e.getFile();
        }
        if (e instanceof FileAlreadyExistsException) {
            return e.getFile() + " is a file where a folder is needed";
        }
        if (e instanceof NoSuchFileException) {
            return e.getFile() + " cannot be made there";
        }
        return e.getReason() == null ? "it is " + e.getFile() : e.getFile() + ": " + e.getReason();
    }
}
