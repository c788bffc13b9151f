package io.burnlaw.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;

/**
 * A campaign folder of which one file is replaced again and again. Its channel stays open and its content is written
 * over: a file that is emptied and closed thousands of times a minute is sent to the disk each time by file systems that
 * guard against a power cut in between.
 */
final class Scratch {

    private final Path folder;
    private final Map<String, FileChannel> open = new HashMap<>();

    Scratch(Map<String, String> files) {
        try {
            folder = Files.createTempDirectory("fuzz");
            folder.toFile().deleteOnExit();
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
            FileChannel channel = open.get(name);
            if (channel == null) {
                Path path = folder.resolve(name);
                channel = FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                path.toFile().deleteOnExit();
                open.put(name, channel);
            }
            ByteBuffer left = ByteBuffer.wrap(bytes);
            channel.position(0);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.truncate(bytes.length);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
