package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Processes that meet in one folder, are killed at the worst moment, or write to a disk that is full. */
class SafeFilesIT {

    /** Many for a study (-Dburnlaw.kills=200), few for every day. */
    private static final int ROUNDS = Math.max(1, Integer.getInteger("burnlaw.kills", 8) / 8);

    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();

    private static final String STRANDS =
            RunnableJar.SAMPLE_RUNS.resolve("strand-set").toString();

    @TempDir
    private Path folder;

    private Path report;
    private SortedMap<String, String> older;
    private SortedMap<String, String> newer;

    @BeforeEach
    void twoReports() throws Exception {
        report = folder.resolve("report");
        RunnableJar.run(folder, "run", STRANDS, "-o", "newer", "--reproducible");
        newer = RunnableJar.files(folder.resolve("newer"));
        RunnableJar.run(folder, "run", STRANDS, "-o", "report", "--reproducible", "--data-only");
        older = RunnableJar.files(report);
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path path : below.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private List<String> beside() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private int halted(String step) throws Exception {
        return RunnableJar.run(
                        folder, List.of("-Dburnlaw.halt=" + step), "run", STRANDS, "-o", "report", "--reproducible")
                .exitCode();
    }

    @Test
    void aKillAtEitherRenameLosesNothing() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            Files.writeString(report.resolve("notes.txt"), "mine");
            assertThat(halted("first-rename")).isEqualTo(137);
            assertThat(RunnableJar.files(report)).containsEntry("notes.txt", "mine");
            assertThat(halted("between-renames")).isEqualTo(137);
            assertThat(report).doesNotExist();
            // whoever wants to read it puts it back
            RunnableJar.run(folder, "compare", "report/burnlaw.json");
            assertThat(report.resolve("notes.txt")).hasContent("mine");
            assertThat(halted("between-renames")).isEqualTo(137);
            assertThat(RunnableJar.run(folder, "render", "report/burnlaw.json", "-o", "drawn")
                            .exitCode())
                    .isZero();
            assertThat(halted("between-renames")).isEqualTo(137);
            assertThat(RunnableJar.run(folder, "plan", "report/burnlaw.json").err())
                    .isEmpty();
            assertThat(halted("between-renames")).isEqualTo(137);
            assertThat(halted("second-rename")).isEqualTo(137);
            assertThat(report.resolve("notes.txt")).hasContent("mine");
            assertThat(RunnableJar.run(folder, "run", STRANDS, "-o", "report", "--reproducible")
                            .exitCode())
                    .isZero();
            assertThat(Files.readString(report.resolve("notes.txt"))).isEqualTo("mine");
            Files.delete(report.resolve("notes.txt"));
            assertThat(RunnableJar.files(report)).isEqualTo(newer);
            assertThat(beside()).containsExactly("drawn", "newer", "report");
            remove(folder.resolve("drawn"));
        }
        left("at the first rename", ROUNDS, "the older report was there");
        left("between the renames", 4 * ROUNDS, "put back by the next command: run; render; compare; plan");
        left("after the second rename", ROUNDS, "the newer report was there; what was aside is cleared");
    }

    private static void left(String kind, int times, String outcome) {
        StudyReport.row(
                "kills-" + kind.replace(' ', '-'),
                "kind,times,outcome",
                kind + "," + times + "," + outcome + "; no file of the owner was lost");
    }

    private List<String> command(boolean ownNumbers, String... words) {
        List<String> command = new ArrayList<>();
        if (ownNumbers) {
            // in each of these spaces the process has the number 1, as in a container
            command.addAll(List.of("unshare", "--map-root-user", "--pid", "--fork"));
        }
        command.addAll(List.of(JAVA, "-jar", RunnableJar.JAR.toString()));
        command.addAll(List.of(words));
        return command;
    }

    private void twoAtOnce(boolean ownNumbers) throws Exception {
        int refused = 0;
        for (int round = 0; round < 2 * ROUNDS; round++) {
            Files.writeString(report.resolve("notes.txt"), "mine");
            List<Process> both = new ArrayList<>();
            List<Path> told = new ArrayList<>();
            for (int one = 0; one < 2; one++) {
                told.add(Files.createTempFile("told", ".txt"));
                both.add(new ProcessBuilder(command(ownNumbers, "run", STRANDS, "-o", "report", "--reproducible"))
                        .directory(folder.toFile())
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .redirectError(told.get(one).toFile())
                        .start());
            }
            int written = 0;
            for (int one = 0; one < 2; one++) {
                assertThat(both.get(one).waitFor(2, TimeUnit.MINUTES)).isTrue();
                String words = Files.readString(told.get(one));
                int code = both.get(one).exitValue();
                assertThat(code).as(words).isIn(0, 3);
                if (code == 3) {
                    assertThat(words).contains("another run is writing this folder");
                }
                written += code == 0 ? 1 : 0;
                Files.delete(told.get(one));
            }
            assertThat(written).isPositive();
            refused += 2 - written;
            assertThat(Files.readString(report.resolve("notes.txt"))).isEqualTo("mine");
            Files.delete(report.resolve("notes.txt"));
            assertThat(RunnableJar.files(report)).isEqualTo(newer);
            assertThat(beside()).containsExactly("newer", "report");
        }
        left(
                ownNumbers ? "two at once with the same process number" : "two at once",
                2 * ROUNDS,
                "one whole report; %d times the second was refused with 3".formatted(refused));
    }

    @Test
    void twoRunsIntoOneFolderLeaveOneWholeReport() throws Exception {
        twoAtOnce(false);
    }

    @Test
    void twoRunsWithTheSameProcessNumberLeaveOneWholeReport() throws Exception {
        assumeTrue(
                new ProcessBuilder("unshare", "--map-root-user", "--pid", "--fork", "true")
                                .start()
                                .waitFor()
                        == 0,
                "spaces of process numbers may be made here");
        twoAtOnce(true);
    }

    private RunnableJar.Outcome shell(String script, String... words) throws Exception {
        List<String> command =
                new ArrayList<>(List.of("/bin/sh", "-c", script, JAVA, "-jar", RunnableJar.JAR.toString()));
        command.addAll(List.of(words));
        return RunnableJar.execute(folder, command);
    }

    @Test
    void whatCouldNotBePrintedIsNoSuccess() throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/full")), "/dev/full is there");
        for (String[] words : new String[][] {
            {"run", STRANDS, "--json"},
            {"check", STRANDS},
            {"plan", STRANDS}
        }) {
            RunnableJar.Outcome outcome = shell("exec \"$0\" \"$@\" > /dev/full", words);
            assertThat(outcome.exitCode()).as(String.join(" ", words)).isEqualTo(3);
            assertThat(outcome.err()).contains("could not be printed in full");
        }
    }

    @Test
    void aFullDiskLeavesNothingHalfMadeAndNoEmptyTable() throws Exception {
        String limited = "ulimit -f 1; exec \"$0\" -XX:-UsePerfData \"$@\"";
        RunnableJar.Outcome made = shell(limited, "new", "fresh");
        assertThat(made.exitCode()).as(made.err()).isEqualTo(3);
        assertThat(folder.resolve("fresh")).doesNotExist();
        Files.writeString(folder.resolve("port.csv"), "x [mm],y [mm]\n6,6\n-6,6\n-6,-6\n6,-6\n");
        Files.writeString(folder.resolve("star.csv"), "earlier");
        RunnableJar.Outcome table = shell(
                limited,
                "surface-table",
                "port.csv",
                "--outer-diameter",
                "50 mm",
                "--length",
                "100 mm",
                "-o",
                "star.csv",
                "--replace");
        assertThat(table.exitCode()).as(table.err()).isEqualTo(3);
        assertThat(folder.resolve("star.csv")).hasContent("earlier");
        assertThat(beside()).containsExactly("newer", "port.csv", "report", "star.csv");
    }

    @Test
    void foldersThatCannotBeReplacedAreToldBeforeAnythingIsWorkedOut() throws Exception {
        assertThat(older).containsKey("burnlaw.json");
        Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("gone"));
        new ProcessBuilder("mkfifo", report.resolve("pipe").toString()).start().waitFor();
        for (String[] each : new String[][] {
            {"dangling", "a link to a missing folder"},
            {"report", "contains pipe, which is a pipe"},
            {"/proc", "mount point"},
            {"newer/index.html", "this is a file"}
        }) {
            RunnableJar.Outcome outcome = RunnableJar.run(folder, "run", STRANDS, "-o", each[0]);
            assertThat(outcome.exitCode()).as(each[0] + outcome.err()).isEqualTo(2);
            assertThat(outcome.err()).contains(each[1]).doesNotContain("Exception");
        }
        Path closed = Files.createDirectory(folder.resolve("closed"));
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("-wx-wx-wx"));
        if (!Files.isReadable(closed)) {
            RunnableJar.Outcome outcome = RunnableJar.run(folder, "run", STRANDS, "-o", "closed");
            assertThat(outcome.exitCode()).isEqualTo(2);
            assertThat(outcome.err()).contains("cannot be read");
        }
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwxrwxrwx"));
    }

    @Test
    void aLocaleWithoutLettersBeyondAsciiIsNamedAsTheCause() throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.execute(
                folder, List.of("env", "LC_ALL=C", JAVA, "-jar", RunnableJar.JAR.toString(), "run", "gr\u00f6\u00dfe"));
        assertThat(outcome.exitCode()).isEqualTo(2);
        assertThat(outcome.err()).contains("LC_ALL=C.UTF-8").doesNotContain("Exception", "java.nio");
        Path campaign =
                Files.createDirectories(folder.resolve("campaign/traces")).getParent();
        Files.writeString(
                campaign.resolve("campaign.yaml"),
                "format: burnlaw-campaign/1\ntitle: x\nformulations: {one: {title: One, density: 1.8 g/cm3}}\n");
        Files.writeString(
                campaign.resolve("points.csv"),
                "point,formulation,pressure [MPa],rate [mm/s],pressure_kind\ngr\u00f6\u00dfe,one,1,5,absolute\nb,one,2,6,absolute\n");
        RunnableJar.Outcome read = RunnableJar.execute(
                folder,
                List.of("env", "LC_ALL=C", JAVA, "-jar", RunnableJar.JAR.toString(), "run", "campaign", "--json"));
        assertThat(read.exitCode()).as(read.err()).isEqualTo(1);
        assertThat(read.out()).contains("gr\u00f6\u00dfe");
    }
}
