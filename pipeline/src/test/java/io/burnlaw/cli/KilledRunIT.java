package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that is killed leaves the old report or the new one, and the next run clears up after it. */
class KilledRunIT {

    /** Many for a study (-Dburnlaw.kills=200), few for every day. */
    private static final int KILLS = Integer.getInteger("burnlaw.kills", 8);

    @TempDir
    private Path folder;

    @Test
    void theFolderIsTheOldReportOrTheNewOne() throws Exception {
        String strands = RunnableJar.SAMPLE_RUNS.resolve("strand-set").toString();
        String sugar = RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source").toString();
        RunnableJar.run(folder, "run", strands, "-o", "first", "--reproducible");
        long start = System.nanoTime();
        RunnableJar.run(folder, "run", sugar, "-o", "second", "--reproducible");
        long whole = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
        SortedMap<String, String> older = RunnableJar.files(folder.resolve("first"));
        SortedMap<String, String> newer = RunnableJar.files(folder.resolve("second"));
        SplittableRandom random = new SplittableRandom(20260101);
        int olderLeft = 0;
        int newerLeft = 0;
        int between = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            putBack(folder.resolve("first"), folder.resolve("report"));
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-jar",
                            RunnableJar.JAR.toString(),
                            "run",
                            sugar,
                            "-o",
                            "report",
                            "--reproducible")
                    .directory(folder.toFile())
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            // The later half is where files are written; the first half only computes.
            Thread.sleep(random.nextLong(whole / 3, whole + whole / 5));
            process.destroyForcibly().waitFor();
            if (Files.exists(folder.resolve("report"))) {
                SortedMap<String, String> left = RunnableJar.files(folder.resolve("report"));
                assertThat(left).isIn(List.of(older, newer));
                olderLeft += left.equals(older) ? 1 : 0;
                newerLeft += left.equals(newer) ? 1 : 0;
            } else {
                between++;
            }
        }
        StudyReport.row(
                "kills-random",
                "kind,times,outcome",
                "killed at a random moment,%d,%d times the older report was there; %d times the newer; %d times neither"
                        .formatted(KILLS, olderLeft, newerLeft, between));
        RunnableJar.run(folder, "run", sugar, "-o", "report", "--reproducible");
        assertThat(RunnableJar.files(folder.resolve("report"))).isEqualTo(newer);
        try (var beside = Files.list(folder)) {
            assertThat(beside.map(path -> path.getFileName().toString()))
                    .containsExactlyInAnyOrder("first", "second", "report");
        }
        // Between two renames there is no folder for some microseconds: more than one hit in all would be a fault.
        assertThat(between).isLessThanOrEqualTo(1);
    }

    private static void putBack(Path original, Path copy) throws IOException {
        if (Files.exists(copy)) {
            try (Stream<Path> below = Files.walk(copy)) {
                for (Path path : below.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
        try (Stream<Path> below = Files.walk(original)) {
            for (Path path : below.toList()) {
                Files.copy(path, copy.resolve(original.relativize(path)));
            }
        }
    }
}
