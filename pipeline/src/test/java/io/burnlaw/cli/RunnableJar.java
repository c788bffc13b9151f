package io.burnlaw.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The jar as a user runs it. */
final class RunnableJar {

    static final Path JAR = Path.of("target", "burnlaw.jar").toAbsolutePath();
    static final Path SAMPLE_RUNS =
            Path.of("..", "sample-runs").toAbsolutePath().normalize();
    static final Path DOCS = Path.of("..", "docs").toAbsolutePath().normalize();

    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();

    /** An environment in which no line is broken. */
    static final Map<String, String> WIDE = Map.of("COLUMNS", "1000");

    private RunnableJar() {}

    /** What a run gave. */
    record Outcome(int exitCode, String out, String err) {

        /** With the command as the application folder starts it. */
        Outcome named() {
            String jar = "java -jar " + JAR;
            return new Outcome(exitCode, out.replace(jar, "burnlaw"), err.replace(jar, "burnlaw"));
        }
    }

    static Outcome run(Path folder, String... words) throws IOException, InterruptedException {
        return run(folder, List.of(), words);
    }

    static Outcome run(Path folder, List<String> jvmOptions, String... words) throws IOException, InterruptedException {
        return execute(folder, command(jvmOptions, words), WIDE);
    }

    /** In the width that is taken where nobody says how wide the terminal is. */
    static Outcome runNarrow(Path folder, String... words) throws IOException, InterruptedException {
        return execute(folder, command(List.of(), words));
    }

    private static List<String> command(List<String> jvmOptions, String... words) {
        List<String> command = new ArrayList<>(List.of(JAVA));
        command.addAll(jvmOptions);
        command.addAll(List.of("-jar", JAR.toString()));
        command.addAll(List.of(words));
        return command;
    }

    static Outcome execute(Path folder, List<String> command) throws IOException, InterruptedException {
        return execute(folder, command, Map.of());
    }

    /** Lines are not broken where the environment says that the terminal is wide. */
    static Outcome execute(Path folder, List<String> command, Map<String, String> environment)
            throws IOException, InterruptedException {
        Path out = Files.createTempFile("out", ".txt");
        Path err = Files.createTempFile("err", ".txt");
        try {
            ProcessBuilder builder = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectOutput(out.toFile())
                    .redirectError(err.toFile());
            builder.environment().remove("COLUMNS");
            builder.environment().putAll(environment);
            Process process = builder.start();
            process.getOutputStream().close();
            if (!process.waitFor(5, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                throw new AssertionError("still running after 5 minutes: " + command);
            }
            return new Outcome(
                    process.exitValue(),
                    Files.readString(out, StandardCharsets.UTF_8),
                    Files.readString(err, StandardCharsets.UTF_8));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    /** All files below a folder, by path, as text. */
    static java.util.SortedMap<String, String> files(Path folder) throws IOException {
        java.util.SortedMap<String, String> files = new java.util.TreeMap<>();
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path file : below.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString(), Files.readString(file, StandardCharsets.UTF_8));
            }
        }
        return files;
    }
}
