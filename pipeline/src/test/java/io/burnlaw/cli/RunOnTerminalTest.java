package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a run says to somebody who reads nothing but the terminal. */
class RunOnTerminalTest {

    private static final Path SAMPLE_RUNS = Path.of("..", "sample-runs");

    @TempDir
    private Path folder;

    private String run(String sample) {
        return run(SAMPLE_RUNS.resolve(sample));
    }

    private String run(Path campaign) {
        StringWriter out = new StringWriter();
        Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(new StringWriter(), true))
                .execute(
                        "run",
                        campaign.toString(),
                        "-o",
                        folder.resolve("report").toString(),
                        "--data-only");
        return out.toString();
    }

    @Test
    void aThroatStandsBesideItsPredictionAndItsCaution() {
        assertThat(run("new-sugar-source"))
                .containsPattern(
                        "prediction check: 10 firings, each predicted from the others. Median error: peak pressure [0-9.]+ %")
                .containsPattern("next throat: [0-9.]+ mm.*\\. Predicted: mean [0-9.]+ MPa, peak at most [0-9.]+ MPa")
                .contains("proof test", "local law and a licensed person");
    }

    @Test
    void inPoundsAndInchesTheSameIsSaid() {
        String campaign = SAMPLE_RUNS.resolve("new-sugar-source").toString();
        String report = folder.resolve("psi").toString();
        String written = run("new-sugar-source");
        Answer shown = Answer.to("run", campaign, "-o", report, "--data-only", "--units", "psi");
        assertThat(shown.out())
                .doesNotContain("MPa", "mm")
                .contains("(r in in/s, P in psi absolute)", "pressure [psi]", "rate [in/s]", " in. Predicted: mean ");
        double megapascal = first(written, "NS-08 +\\| +([0-9.]+)");
        // by hand: 1 MPa is 145.038 psi (NIST SP 811)
        assertThat(first(shown.out(), "NS-08 +\\| +([0-9.]+)")).isCloseTo(145.038 * megapascal, within(0.1));
        String document = folder.resolve("psi/burnlaw.json").toString();
        Answer plan = Answer.to("plan", document, "--units", "bar", "--throat", "9 mm");
        assertThat(plan.out())
                .contains("peak [bar]", "allowed: 47.", "throat [mm]")
                .doesNotContain("MPa");
        assertThat(Answer.to("plan", document, "--units", "furlong").err())
                .contains("--units furlong: write one of mpa, bar, psi");
        assertThat(Answer.to("plan", document, "--sharpen", "edge").err())
                .contains("--sharpen edge: write one of exponent, break");
        // a document stays as it is
        assertThat(Answer.to("plan", document, "--units", "psi", "--json").out())
                .isEqualTo(Answer.to("plan", document, "--json").out());
    }

    private static double first(String text, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        assertThat(found.find()).as(text).isTrue();
        return Double.parseDouble(found.group(1));
    }

    @Test
    void whatAFiringIsCautionedOfStandsBesideItsPoint() {
        assertThat(run("difficult-stand"))
                .containsPattern("DS-05 .*baseline-drift")
                .containsPattern("DS-10 .*lower grade; thrust-derived")
                .containsPattern("(?m)^ +DS-06 [^a-z]*$");
    }

    @Test
    void whereNoMotorWasFiredNoThroatIsSpokenOf() {
        assertThat(run("strand-set")).doesNotContain("next throat", "proof test", "prediction check");
    }

    @Test
    void ofVeryManyPointsThoseThatStandOutAreShown() throws IOException {
        Path campaign = Files.createDirectory(folder.resolve("many"));
        Files.writeString(campaign.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented points
                ambient_pressure: 100 kPa
                formulations:
                  plain:
                    title: Invented propellant
                """);
        StringBuilder points = new StringBuilder("point,formulation,pressure [MPa],pressure_kind,rate [mm/s]\n");
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 100; i++) {
            double pressure = 1 + 0.05 * i;
            double factor = i == 40 ? 1.1 : 1 + 0.01 * random.nextDouble(-1, 1);
            points.append(String.format(
                    Locale.ROOT,
                    "P%03d,plain,%.4f,absolute,%.5f%n",
                    i,
                    pressure,
                    5 * Math.pow(pressure, 0.4) * factor));
        }
        Files.writeString(campaign.resolve("points.csv"), points);
        assertThat(run(campaign))
                .contains("1 of 100 points: those with a remark or far from the law; all are in rates.csv")
                .contains(" P040 ")
                .doesNotContain(" P041 ");
    }
}
