package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.planning.PlanOptions;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No text, page or document sends anybody to a pressure that the case does not allow. */
class NamedPressuresTest {

    private static final double AMBIENT = 0.101325;

    private static final Pattern PRESSURE = Pattern.compile("(\\d+(?:\\.\\d+)?)(?: |\u00a0|&nbsp;)MPa");

    private static final Pattern TABLE_OF_PEAKS = Pattern.compile("\"(?:mean|max)(?:_low|_high)?\": ?\\[ ?([\\d.]+)");

    private static final Pattern ANY_NUMBER_OF_MEGAPASCALS = Pattern.compile(
            "\"value\": ?(\\d+(?:\\.\\d+)?), ?\"unit\": ?\"MPa\"(?:, ?\"low\": ?[\\d.]+, ?\"high\": ?([\\d.]+))?");

    @TempDir
    private Path folder;

    private String run(String... words) {
        StringWriter out = new StringWriter();
        PrintWriter both = new PrintWriter(out, true);
        Burnlaw.commandLine(both, both).execute(words);
        return out.toString();
    }

    private Path campaign(String hardware, double... pressures) throws IOException {
        Path made = Files.createDirectories(folder.resolve("campaign"));
        Files.writeString(made.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented for a test
                formulations:
                  one: {title: One, density: 1.80 g/cm3}
                trace: {pressure_kind: absolute}
                """ + hardware);
        StringBuilder points = new StringBuilder("point,formulation,pressure [MPa],rate [mm/s],pressure_kind\n");
        for (int i = 0; i < pressures.length; i++) {
            points.append(String.format(
                    Locale.ROOT,
                    "p%d,one,%.4f,%.4f,absolute%n",
                    i,
                    pressures[i],
                    5 * Math.pow(pressures[i], 0.4) * (1 + 0.01 * (i % 3 - 1))));
        }
        Files.writeString(made.resolve("points.csv"), points);
        return made;
    }

    private static void nothingAbove(double allowed, String stated, String text, String where) {
        for (Pattern pattern : List.of(PRESSURE, TABLE_OF_PEAKS, ANY_NUMBER_OF_MEGAPASCALS)) {
            Matcher each = pattern.matcher(text.replace(stated + " MPa", "the limit"));
            while (each.find()) {
                for (int group = 1; group <= each.groupCount(); group++) {
                    if (each.group(group) != null) {
                        int from = Math.max(0, each.start() - 200);
                        // 0.5 %: three digits in print
                        assertThat(Double.parseDouble(each.group(group)))
                                .as(where + ": " + text.substring(from, each.end()))
                                .isLessThanOrEqualTo(allowed * 1.005);
                    }
                }
            }
        }
    }

    @Test
    void oneFiringIsNotSentAboveWhatTheCaseAllows() throws IOException {
        String text = run(
                "run", campaign("hardware: {case_pressure_limit: 5 MPa}\n", 3.2).toString(), "--json");
        assertThat(text).contains("Fire at 1.07 MPa");
        nothingAbove(5 / 1.5 + AMBIENT, "5.00", text.replace("\"value\": 5.0", ""), "json");
    }

    @Test
    void withoutALimitNothingIsCalledInsideIt() throws IOException {
        String text = run("run", campaign("", 3.2).toString(), "--json");
        assertThat(text).contains("case_pressure_limit").doesNotContain("inside the case limit");
        nothingAbove(3.2, "none", text, "json");
    }

    @Test
    void manyTimesFasterIsNotAnsweredWithAPressureFarAboveAllThatWasMeasured() throws IOException {
        double[] pressures = {0.5, 0.8, 1.2, 2, 3, 4.5, 6};
        nothingAbove(9, "none", run("run", campaign("", pressures).toString(), "--json"), "json");
    }

    @Test
    void noTerminalPageOrDocumentNamesAPressureAboveWhatTheCaseAllows() throws IOException {
        SplittableRandom random = new SplittableRandom(20260111);
        for (int round = 0; round < 12; round++) {
            double limit = Math.round(100 * random.nextDouble(2, 30)) / 100.0;
            double factor = Math.round(10 * random.nextDouble(1, 3)) / 10.0;
            double allowed = PressureLimit.of(new Hardware(OptionalDouble.of(limit * 1e6), factor), AMBIENT * 1e6)
                            .allowed()
                            .orElseThrow()
                    / 1e6;
            // everything was fired below what is allowed, so that every higher pressure is one that the program names
            double[] pressures = random.doubles(1 + round % 6, 0.15 * allowed, 0.98 * allowed)
                    .sorted()
                    .toArray();
            String hardware = String.format(
                    Locale.ROOT, "hardware: {case_pressure_limit: %.2f MPa, safety_factor: %.1f}%n", limit, factor);
            Path made = campaign(hardware, pressures);
            Path report = folder.resolve("report" + round);
            String terminal = run("run", made.toString(), "-o", report.toString());
            String stated = io.burnlaw.quantity.NumberFormat.significant(limit, 3);
            nothingAbove(allowed, stated, terminal, "terminal, " + hardware);
            String page = Files.readString(report.resolve("index.html"));
            String json = Files.readString(report.resolve("burnlaw.json"));
            String limitOfDocument = "\"case_pressure_limit\"";
            for (String text : List.of(page, json)) {
                assertThat(text).contains(limitOfDocument);
                String rest = text.replaceAll("\"case_pressure_limit\": ?\\{[^}]*\\}", "")
                        .replaceAll("Case limit</dt><dd>[^<]*", "");
                nothingAbove(allowed, stated, rest, hardware);
            }
        }
    }

    @Test
    void aLimitWithoutAUnitIsAskedForAndNotGuessed() throws IOException {
        String text = run(
                "check",
                campaign("hardware: {case_pressure_limit: 70}\n", 1, 2, 3).toString());
        assertThat(text).contains("70 MPa, 70 bar or 70 psi");
        assertThat(run("plan", "--rate", "5 at 1 MPa", "--exponent", "0.3")).contains("5 mm/s or 5 in/s");
        assertThat(run("plan", folder.resolve("campaign").toString(), "--throat", "7"))
                .contains("7 mm, 7 cm or 7 in");
    }

    @Test
    void plansKeepTheConfidenceOfTheCampaignAndNeverLessThanNinetyPercent() {
        assertThat(PlanOptions.defaults().withLevelOf(0.99).level()).isEqualTo(0.99);
        assertThat(PlanOptions.defaults().withLevelOf(0.6).level()).isEqualTo(0.9);
    }

    @Test
    void theRunPlansAtTheConfidenceOfTheCampaign() throws IOException {
        Path made = Files.createDirectories(folder.resolve("sugar"));
        Path sugar = Path.of("..", "sample-runs", "new-sugar-source");
        try (var files = Files.walk(sugar)) {
            for (Path file : files.toList()) {
                Path to = made.resolve(sugar.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(to);
                } else {
                    Files.copy(file, to);
                }
            }
        }
        String yaml = Files.readString(made.resolve("campaign.yaml"));
        Files.writeString(
                made.resolve("campaign.yaml"),
                yaml.contains("fit:")
                        ? yaml.replaceFirst("fit:", "fit:\n  confidence: 99 %")
                        : yaml + "\nfit: {confidence: 99 %}\n");
        String document = run("run", made.toString(), "--json");
        assertThat(document).contains("99 % prediction");
        assertThat(document.substring(document.indexOf("\"plans\"")))
                .contains("\"level\": 0.99")
                .doesNotContain("\"level\": 0.95");
        assertThat(run("plan", made.toString())).contains("99 %").doesNotContain("95 %");
    }
}
