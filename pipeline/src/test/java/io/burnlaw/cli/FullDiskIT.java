package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file system that fills up while the report is written: the earlier report stays as it was. */
class FullDiskIT {

    /** Mounts a small file system in a name space of its own, runs over an older report there, and copies what is left. */
    private static final String SCRIPT = "mount -t tmpfs -o size=$1k tmpfs disk && cp -r older disk/report || exit 99; "
            + "\"$2\" -jar \"$3\" run \"$4\" -o disk/report --reproducible; code=$?; cp -r disk left; exit $code";

    private static final String SUGAR =
            RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source").toString();

    @TempDir
    private Path folder;

    private RunnableJar.Outcome run(long kibibytes) throws IOException, InterruptedException {
        return RunnableJar.execute(
                folder,
                List.of(
                        "unshare",
                        "-rm",
                        "/bin/sh",
                        "-c",
                        SCRIPT,
                        "sh",
                        Long.toString(kibibytes),
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        RunnableJar.JAR.toString(),
                        SUGAR));
    }

    /** Each file and folder takes whole pages of a tmpfs. */
    private static long pages(Path folder) throws IOException {
        try (Stream<Path> below = Files.walk(folder)) {
            long kibibytes = 0;
            for (Path path : below.toList()) {
                kibibytes += Files.isDirectory(path) ? 4 : 4 * ((Files.size(path) + 4095) / 4096);
            }
            return kibibytes;
        }
    }

    private static boolean mayMount(Path folder) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("sh", "-c", "unshare -rm mount -t tmpfs tmpfs disk")
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return process.waitFor() == 0;
    }

    @Test
    void theEarlierReportStays() throws Exception {
        Files.createDirectory(folder.resolve("disk"));
        assumeTrue(mayMount(folder), "a user may not mount here");
        RunnableJar.run(
                folder,
                "run",
                RunnableJar.SAMPLE_RUNS.resolve("strand-set").toString(),
                "-o",
                "older",
                "--data-only",
                "--reproducible");
        RunnableJar.run(folder, "run", SUGAR, "-o", "newer", "--reproducible");
        SortedMap<String, String> older = RunnableJar.files(folder.resolve("older"));
        long occupied = pages(folder.resolve("older"));
        long needed = pages(folder.resolve("newer"));
        for (int quarter = 0; quarter <= 3; quarter++) {
            RunnableJar.Outcome outcome = run(occupied + needed * quarter / 4 + 8);
            assertThat(outcome.exitCode()).as(outcome.err()).isEqualTo(3);
            assertThat(outcome.err()).startsWith("burnlaw: ").contains("report").doesNotContain("Exception", "at java");
            try (Stream<Path> left = Files.list(folder.resolve("left"))) {
                assertThat(left.map(path -> path.getFileName().toString())).containsExactly("report");
            }
            assertThat(RunnableJar.files(folder.resolve("left/report"))).isEqualTo(older);
            remove(folder.resolve("left"));
        }
        RunnableJar.Outcome enough = run(occupied + needed + 256);
        assertThat(enough.exitCode()).as(enough.err()).isZero();
        assertThat(RunnableJar.files(folder.resolve("left/report")))
                .isEqualTo(RunnableJar.files(folder.resolve("newer")));
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path path : below.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
