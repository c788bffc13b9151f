package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole tool through its real jar. */
class CommandLineIT {

    private static final String SUGAR =
            RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source").toString();

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"new-sugar-source", "slow-regime", "strand-set", "additive-levels", "difficult-stand"})
    void everySampleRunGivesAReport(String name) throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.run(
                folder, "run", RunnableJar.SAMPLE_RUNS.resolve(name).toString(), "-o", "report");
        assertThat(outcome.exitCode()).as(outcome.err()).isIn(0, 1);
        assertThat(outcome.err()).isEmpty();
        assertThat(folder.resolve("report")).isDirectoryContaining("glob:**/index.html");
        assertThat(folder.resolve("report/burnlaw.json")).isNotEmptyFile();
        assertThat(folder.resolve("report/rates.csv")).isNotEmptyFile();
        assertThat(folder.resolve("report/laws.csv")).isNotEmptyFile();
        assertThat(folder.resolve("report/charts")).isNotEmptyDirectory();
        assertThat(htmlFaults(folder.resolve("report"))).isEmpty();
    }

    /**
     * What the Nu HTML checker says of all pages below a folder, but for what it does not know: SVG 2, CSS Overflow 4,
     * and hashes in a policy.
     */
    private String htmlFaults(Path report) throws Exception {
        RunnableJar.Outcome checked = RunnableJar.execute(
                folder,
                List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xss64m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "nu.validator.client.SimpleCommandLineValidator",
                        "--Werror",
                        "--skip-non-html",
                        "--filterpattern",
                        ".*(paint-order|vector-effect|details-content|violates Content Security Policy).*",
                        report.toString()));
        assertThat(checked.exitCode()).as(checked.err()).isBetween(0, 1);
        return checked.out() + checked.err();
    }

    @Test
    void theSameInputGivesTheSameBytesWhateverTheMachineIsLike() throws Exception {
        RunnableJar.run(folder, "run", SUGAR, "-o", "one", "--reproducible", "--workers", "1");
        RunnableJar.run(
                folder,
                List.of(
                        "-Duser.language=tr",
                        "-Duser.country=TR",
                        "-Duser.timezone=Asia/Kathmandu",
                        "-Dfile.encoding=ISO-8859-1"),
                "run",
                SUGAR,
                "-o",
                "two",
                "--reproducible",
                "--workers",
                "2");
        assertThat(RunnableJar.files(folder.resolve("two"))).isEqualTo(RunnableJar.files(folder.resolve("one")));
    }

    /** The environment may name a later Java: {@code JAVA_HOME_25=... mvn verify}. */
    @Test
    @EnabledIfEnvironmentVariable(named = "JAVA_HOME_25", matches = ".+")
    void aLaterJavaGivesTheSameBytes() throws Exception {
        RunnableJar.run(folder, "run", SUGAR, "-o", "one", "--reproducible");
        RunnableJar.Outcome later = RunnableJar.execute(
                folder,
                List.of(
                        Path.of(System.getenv("JAVA_HOME_25"), "bin", "java").toString(),
                        "-jar",
                        RunnableJar.JAR.toString(),
                        "run",
                        SUGAR,
                        "-o",
                        "two",
                        "--reproducible"));
        assertThat(later.exitCode()).as(later.err()).isZero();
        assertThat(RunnableJar.files(folder.resolve("two"))).isEqualTo(RunnableJar.files(folder.resolve("one")));
    }

    @Test
    void aReportIsDrawnFromTheDocumentAloneByteForByte() throws Exception {
        RunnableJar.run(folder, "run", SUGAR, "-o", "one");
        RunnableJar.Outcome fromDocument = RunnableJar.run(folder, "render", "one/burnlaw.json", "-o", "two");
        RunnableJar.Outcome fromPage = RunnableJar.run(folder, "render", "one/index.html", "-o", "three");
        assertThat(fromDocument.exitCode()).as(fromDocument.err()).isZero();
        assertThat(fromPage.exitCode()).as(fromPage.err()).isZero();
        assertThat(RunnableJar.files(folder.resolve("two"))).isEqualTo(RunnableJar.files(folder.resolve("one")));
        assertThat(RunnableJar.files(folder.resolve("three"))).isEqualTo(RunnableJar.files(folder.resolve("one")));
    }

    @Test
    void theDocumentOnStandardOutputIsTheOneInTheFolder() throws Exception {
        RunnableJar.Outcome printed = RunnableJar.run(folder, "run", SUGAR, "--json", "--reproducible");
        RunnableJar.run(folder, "run", SUGAR, "-o", "one", "--reproducible");
        assertThat(printed.out()).isEqualTo(Files.readString(folder.resolve("one/burnlaw.json")));
        assertThat(printed.exitCode()).isZero();
    }

    @Test
    void anAdditiveThatWorksIsToldFromOneThatDoesNot() throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.run(
                folder,
                "run",
                RunnableJar.SAMPLE_RUNS.resolve("additive-levels").toString(),
                "-o",
                "levels");
        assertThat(outcome.out())
                .contains("k-05 differs from plain", "k-10 differs from plain", "k-20 differs from plain")
                .contains("No difference shown between z-10 and plain")
                .contains("each percent by mass of invented additive K changes the rate by");
        RunnableJar.Outcome again =
                RunnableJar.run(folder, "compare", "levels/index.html", "--candidate", "z-10", "--confidence", "90");
        assertThat(again.exitCode()).as(again.err()).isZero();
        assertThat(again.out())
                .contains("No difference shown between z-10 and plain")
                .contains("Bands have a confidence of 90 %");
    }

    @Test
    void severalCampaignsGetAFolderEach() throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.run(
                folder,
                "run",
                SUGAR,
                RunnableJar.SAMPLE_RUNS.resolve("strand-set").toString(),
                "-o",
                "reports",
                "--data-only");
        assertThat(outcome.exitCode()).as(outcome.err()).isIn(0, 1);
        assertThat(folder.resolve("reports/new-sugar-source/burnlaw.json")).exists();
        assertThat(folder.resolve("reports/strand-set/burnlaw.json")).exists();
        assertThat(folder.resolve("reports/strand-set/index.html")).doesNotExist();
    }

    @Test
    void aFailedRunLeavesTheEarlierReportAsItWas() throws Exception {
        RunnableJar.run(folder, "run", SUGAR, "-o", "report");
        var before = RunnableJar.files(folder.resolve("report"));
        Files.createDirectory(folder.resolve("broken"));
        Files.writeString(folder.resolve("broken/campaign.yaml"), "format: burnlaw-campaign/1\ntitel: x\n");
        RunnableJar.Outcome outcome = RunnableJar.run(folder, "run", "broken", "-o", "report");
        assertThat(outcome.exitCode()).isEqualTo(2);
        assertThat(outcome.err()).contains("titel").contains("title").doesNotContain("Exception");
        assertThat(RunnableJar.files(folder.resolve("report"))).isEqualTo(before);
    }

    @Test
    void aFolderThatIsNoReportIsNotSweptAway() throws Exception {
        Files.createDirectory(folder.resolve("precious"));
        Files.writeString(folder.resolve("precious/thesis.txt"), "years of work");
        RunnableJar.Outcome outcome = RunnableJar.run(folder, "run", SUGAR, "-o", "precious");
        assertThat(outcome.exitCode()).isEqualTo(2);
        assertThat(folder.resolve("precious/thesis.txt")).hasContent("years of work");
    }

    @Test
    void whatNewMakesCanBeCheckedAndIsNotOverwritten() throws Exception {
        assertThat(RunnableJar.run(folder, "new", "mine").exitCode()).isZero();
        RunnableJar.Outcome check = RunnableJar.run(folder, "check", "mine");
        assertThat(check.exitCode()).as(check.out() + check.err()).isEqualTo(1);
        assertThat(check.out())
                .contains("Everything could be read, but there is nothing to use yet.")
                .doesNotContain("no such file");
        RunnableJar.Outcome again = RunnableJar.run(folder, "new", "mine");
        assertThat(again.exitCode()).isEqualTo(2);
        assertThat(again.err()).contains("mine");
    }

    @Test
    void wrongWordsGetOneLineAndTheNearestRightOne() throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.run(folder, "run", SUGAR, "--reproducibel");
        assertThat(outcome.exitCode()).isEqualTo(2);
        assertThat(outcome.err()).contains("--reproducible").hasLineCount(2);
        assertThat(RunnableJar.run(folder, "runn", SUGAR).err()).contains("run");
        assertThat(RunnableJar.run(folder).exitCode()).isEqualTo(2);
        RunnableJar.Outcome nowhere = RunnableJar.run(folder, "run", "nowhere");
        assertThat(nowhere.exitCode()).isEqualTo(2);
        assertThat(nowhere.err()).contains("nowhere").doesNotContain("Exception");
    }

    @Test
    void everyCommandHasHelpWithAnExample() throws Exception {
        for (String command : List.of("new", "check", "run", "compare", "render", "simulate")) {
            RunnableJar.Outcome help = RunnableJar.run(folder, command, "--help");
            assertThat(help.exitCode()).as(command).isZero();
            assertThat(help.out())
                    .as(command)
                    .contains("burnlaw " + command + " ")
                    .contains("Example");
        }
        assertThat(RunnableJar.run(folder, "--version").out()).startsWith("burnlaw 0.");
    }

    @Test
    void noRunLeavesAnythingBesideItsFolder() throws Exception {
        RunnableJar.run(folder, "run", SUGAR, "-o", "report");
        RunnableJar.run(folder, "run", SUGAR, "-o", "report");
        try (Stream<Path> beside = Files.list(folder)) {
            assertThat(beside.map(path -> path.getFileName().toString())).containsExactly("report");
        }
    }
}
