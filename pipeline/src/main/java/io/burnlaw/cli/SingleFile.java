package io.burnlaw.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;

/** A file that is there whole or not at all. */
final class SingleFile {

    private SingleFile() {}

    /**
     * Writes a file in the place of the one that may be there: a disk that is full costs the new one only.
     *
     * @param output where; a link leads to the file that is written
     * @param bytes  what is in it
     * @throws IOException if it cannot be written
     */
    static void write(Path output, byte[] bytes) throws IOException {
        Path place = Files.exists(output) ? output.toRealPath() : output.toAbsolutePath();
        Path beside = place.resolveSibling(".burnlaw-" + UUID.randomUUID());
        try {
            Files.write(beside, bytes);
            Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
