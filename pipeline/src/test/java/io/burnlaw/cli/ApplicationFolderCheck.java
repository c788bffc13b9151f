package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The application folder, moved from where it was made to a place whose name has blanks; the jar says what to expect. */
class ApplicationFolderCheck {

    private static final Path MADE = Path.of("target", "image", "burnlaw").toAbsolutePath();
    private static final Path ARCHIVE = Path.of("lib", "runtime", "lib", "server", "classes.jsa");

    @TempDir
    private static Path place;

    private static Path application;

    @TempDir
    private Path folder;

    @BeforeAll
    static void moveIt() throws IOException {
        application = place.resolve("another place").resolve("burnlaw of ours");
        Files.createDirectories(application.getParent());
        try (Stream<Path> all = Files.walk(MADE)) {
            for (Path each : all.toList()) {
                // without the times of the files, as a copy over a network may come
                Path copy = application.resolve(MADE.relativize(each).toString());
                Files.copy(each, copy, LinkOption.NOFOLLOW_LINKS, StandardCopyOption.REPLACE_EXISTING);
                if (Files.isExecutable(each) && Files.isRegularFile(copy, LinkOption.NOFOLLOW_LINKS)) {
                    assertThat(copy.toFile().setExecutable(true)).isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "additive-levels",
                "difficult-stand",
                "four-batches",
                "new-sugar-source",
                "slow-regime",
                "strand-set"
            })
    void aSampleRunGivesTheSameReportAndWords(String name) throws Exception {
        assertSame(RunnableJar.SAMPLE_RUNS.resolve(name));
    }

    @Test
    void readsEachKindOfRecord() throws Exception {
        Path campaign = folder.resolve("a campaign");
        Path sugar = RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source");
        Files.createDirectories(campaign.resolve("traces"));
        Files.copy(sugar.resolve("campaign.yaml"), campaign.resolve("campaign.yaml"));
        List<String> log = new ArrayList<>(Files.readAllLines(sugar.resolve("firings.csv")));
        for (String record : List.of("record.xlsx", "record-v7.mat", "record-matrix.mat")) {
            Files.copy(
                    Path.of("src/test/resources/io/burnlaw/trace/reading", record),
                    campaign.resolve("traces").resolve(record));
            log.add(record + ",date,traces/" + record + ",bates,2,14.00,38.04,62.04,9.51,218.2,200");
        }
        Files.write(campaign.resolve("firings.csv"), log);
        try (Stream<Path> traces = Files.list(sugar.resolve("traces"))) {
            for (Path trace : traces.toList()) {
                Files.copy(trace, campaign.resolve("traces").resolve(trace.getFileName()));
            }
        }
        assertSame(campaign);
    }

    private void assertSame(Path campaign) throws Exception {
        String[] run = {"run", campaign.toString(), "--reproducible", "-o", "a report"};
        RunnableJar.Outcome expected = RunnableJar.run(Files.createDirectory(folder.resolve("jar")), run)
                .named();
        assertThat(start(Files.createDirectory(folder.resolve("application")), run))
                .isEqualTo(expected);
        assertThat(RunnableJar.files(folder.resolve("application")))
                .isNotEmpty()
                .isEqualTo(RunnableJar.files(folder.resolve("jar")));
    }

    @Test
    void planPrintsTheSameTable() throws Exception {
        String sugar = RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source").toString();
        RunnableJar.Outcome expected = RunnableJar.run(folder, "plan", sugar).named();
        assertThat(start(folder, "plan", sugar)).isEqualTo(expected);
    }

    @Test
    void itsClassesComeFromTheArchive() throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.execute(
                folder,
                List.of(
                        application.resolve("lib/runtime/bin/java").toString(),
                        "-Xshare:on",
                        "-Xlog:class+load",
                        "-m",
                        "io.burnlaw/io.burnlaw.cli.Burnlaw",
                        "--version"));
        assertThat(outcome.out().lines().filter(line -> line.contains(" io.burnlaw.cli.Burnlaw ")))
                .singleElement()
                .asString()
                .contains("shared objects file");
    }

    @Test
    void anArchiveThatDoesNotFitIsPassedOverInSilence() throws Exception {
        Path archive = application.resolve(ARCHIVE);
        byte[] good = Files.readAllBytes(archive);
        Files.delete(archive);
        try {
            for (int length : new int[] {0, 100_000}) {
                Files.write(archive, java.util.Arrays.copyOf(good, length));
                RunnableJar.Outcome outcome = start(folder, "--version");
                assertThat(outcome).isEqualTo(RunnableJar.run(folder, "--version"));
            }
        } finally {
            Files.write(archive, good);
        }
    }

    @Test
    void bringsItsManualPageItsCompletionAndTheLicences() throws Exception {
        Path share = application.resolve("lib/app/share");
        String page = Files.readString(share.resolve("man/man1/burnlaw.1"));
        assertThat(Commands.names()).allSatisfy(name -> assertThat(page).contains(".SH \"burnlaw " + name + "\""));
        Path completion = share.resolve("bash-completion/completions/burnlaw");
        RunnableJar.Outcome offered = RunnableJar.execute(
                folder,
                List.of(
                        "bash",
                        "-c",
                        ". \"$1\"; COMP_WORDS=(burnlaw che); COMP_CWORD=1; _complete_burnlaw; echo ${COMPREPLY[@]}",
                        "bash",
                        completion.toString()));
        assertThat(offered.out()).isEqualTo("check\n");
        assertThat(share.resolve("licenses/Apache-2.0.txt")).isNotEmptyFile();
        assertThat(share.resolve("licenses/commons-math3-3.6.1/NOTICE.txt")).isNotEmptyFile();
        assertThat(application.resolve("lib/runtime/legal/java.base")).isNotEmptyDirectory();
    }

    @Test
    void startsThroughALink() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("link"), application.resolve("bin/burnlaw"));
        assertThat(RunnableJar.execute(folder, List.of(link.toString(), "--version")))
                .isEqualTo(RunnableJar.run(folder, "--version"));
    }

    private static RunnableJar.Outcome start(Path from, String... words) throws Exception {
        List<String> command =
                new ArrayList<>(List.of(application.resolve("bin/burnlaw").toString()));
        command.addAll(List.of(words));
        return RunnableJar.execute(from, command, RunnableJar.WIDE);
    }
}
