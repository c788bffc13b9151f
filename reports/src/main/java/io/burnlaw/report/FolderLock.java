package io.burnlaw.report;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.ThreadLocalRandom;

/** One run at a time writes a folder, whatever machine, container or number it has. */
record FolderLock(FileChannel channel, Path file, boolean held) implements AutoCloseable {

    /** Of a lock file [bytes]; it is empty but for its last byte. */
    private static final long LARGEST = 1L << 20;

    static FolderLock of(Path named, Path place) throws IOException {
        Path file = place.resolveSibling("." + Siblings.label(place) + ".lock");
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
                return new FolderLock(channel, file, false);
            }
            if (!locked) {
                channel.close();
                throw new IOException(named
                        + ": another run is writing this folder now; nothing was changed. Run again when"
                        + " it has ended.");
            }
            if (isStillThere(channel, file)) {
                return new FolderLock(channel, file, true);
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
