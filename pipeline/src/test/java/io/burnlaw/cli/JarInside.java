package io.burnlaw.cli;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * The built jar in one process that answers many commands: the same way through its main as from a shell, without the
 * start of a process for each.
 */
final class JarInside implements AutoCloseable {

    private final Process process;
    private final DataOutputStream to;
    private final DataInputStream from;

    JarInside() throws IOException {
        // the jar goes first, so that all but this class is of it
        String path = RunnableJar.JAR + System.getProperty("path.separator") + Path.of("target", "test-classes");
        process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx1g",
                        // one thread in all: studies run beside other work
                        "-XX:ActiveProcessorCount=1",
                        "-XX:+UseSerialGC",
                        "-Dburnlaw.trace=" + Boolean.getBoolean("burnlaw.trace"),
                        "-cp",
                        path,
                        JarInside.class.getName()))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        to = new DataOutputStream(process.getOutputStream());
        from = new DataInputStream(process.getInputStream());
    }

    Answer answer(String... words) throws IOException {
        to.writeInt(words.length);
        for (String word : words) {
            write(to, word.getBytes(StandardCharsets.UTF_8));
        }
        to.flush();
        return new Answer(from.readInt(), read(from), read(from));
    }

    @Override
    public void close() throws IOException {
        to.close();
        process.destroy();
    }

    private static void write(DataOutputStream to, byte[] bytes) throws IOException {
        to.writeInt(bytes.length);
        to.write(bytes);
    }

    private static String read(DataInputStream from) throws IOException {
        return new String(from.readNBytes(from.readInt()), StandardCharsets.UTF_8);
    }

    /** In the other process. */
    public static void main(String[] none) throws IOException {
        DataInputStream commands = new DataInputStream(System.in);
        DataOutputStream answers = new DataOutputStream(System.out);
        System.setOut(new PrintStream(OutputStream.nullOutputStream()));
        try {
            while (true) {
                String[] words = new String[commands.readInt()];
                for (int i = 0; i < words.length; i++) {
                    words[i] = read(commands);
                }
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                ByteArrayOutputStream err = new ByteArrayOutputStream();
                answers.writeInt(Burnlaw.run(words, new PrintStream(out, true), new PrintStream(err, true)));
                write(answers, out.toByteArray());
                write(answers, err.toByteArray());
                answers.flush();
            }
        } catch (EOFException end) {
            // no more commands
        }
    }
}
