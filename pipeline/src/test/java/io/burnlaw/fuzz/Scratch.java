package io.burnlaw.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** A campaign folder of which one file is replaced again and again. */
final class Scratch {

    private final Path folder;

    Scratch(Map<String, String> files) {
        try {
            folder = Files.createTempDirectory("fuzz");
            for (Map.Entry<String, String> file : files.entrySet()) {
                write(file.getKey(), file.getValue().getBytes(StandardCharsets.UTF_8));
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    Path folder() {
        return folder;
    }

    void write(String name, byte[] bytes) {
        try {
            Path path = folder.resolve(name);
            Files.createDirectories(path.getParent());
            Files.write(path, bytes);
            path.toFile().deleteOnExit();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
