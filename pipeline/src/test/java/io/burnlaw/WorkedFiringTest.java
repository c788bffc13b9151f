package io.burnlaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.Progress;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The firing that docs/methods.md follows from its record to the page: each number there is the one that a run gives. */
class WorkedFiringTest {

    private static final Path METHODS = Path.of("..", "docs", "methods.md");
    private static final Path SAMPLE = Path.of("..", "sample-runs", "new-sugar-source");
    private static final String ID = "NS-05";
    private static final String BEGIN = "<!-- worked firing -->\n";
    private static final String END = "<!-- end of the worked firing -->\n";

    // as the log has them [mm]
    private static final double OUTER = 37.98;
    private static final double CORE = 14.08;
    private static final double LENGTH = 62.07;
    private static final double THROAT = 6.80;

    /** [kg]. */
    private static final double MASS = 0.2170;

    @Test
    void theNumbersInTheMethodsAreThoseOfARun() throws IOException {
        String text = Files.readString(METHODS);
        String made = table(document());
        int from = text.indexOf(BEGIN) + BEGIN.length();
        int to = text.indexOf(END);
        assertThat(to).as("docs/methods.md has its two marks").isGreaterThanOrEqualTo(from);
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.writeString(METHODS, text.substring(0, from) + made + text.substring(to));
            return;
        }
        assertThat(text.substring(from, to)).isEqualTo(made);
    }

    @Test
    void theCharacteristicVelocityIsTheIntegralOfTheRecordOverTheMass() throws IOException {
        Firing firing = document().firings().stream()
                .filter(each -> each.id().equals(ID))
                .findFirst()
                .orElseThrow();
        double impulse = integral(
                        record(),
                        firing.events().start().value(),
                        firing.events().end().value())
                * Math.PI
                / 4
                * THROAT
                * THROAT;
        // 0.2 %: the gas left in the chamber at G, 3 kPa in 200 cm3, and the two ends between samples are not in this
        // integral
        assertThat(impulse / MASS).isCloseTo(firing.characteristicVelocity().value(), within(0.002 * impulse / MASS));
    }

    @Test
    void theLogHasTheDimensionsThatTheTextNames() throws IOException {
        String row = Files.readAllLines(SAMPLE.resolve("firings.csv")).stream()
                .filter(line -> line.startsWith(ID))
                .findFirst()
                .orElseThrow();
        assertThat(row).contains("bates,2,14.08 ± 0.02,37.98 ± 0.02,62.07 ± 0.02,6.80 ± 0.02,217.0");
    }

    private static Characterization document() {
        return CampaignReader.read(SAMPLE)
                .match(
                        read -> CharacterizationDocument.result(
                                Characterizer.characterize(read, 2, Progress.silent()),
                                "test",
                                Optional.empty(),
                                false),
                        unusable -> {
                            throw new AssertionError(unusable);
                        });
    }

    private static String table(Characterization document) throws IOException {
        Firing firing = document.firings().stream()
                .filter(each -> each.id().equals(ID))
                .findFirst()
                .orElseThrow();
        Point point = document.formulations().get(0).points().stream()
                .filter(each -> each.id().equals(ID))
                .findFirst()
                .orElseThrow();
        Law law = document.formulations().get(0).useLaws().get(0);
        double[][] record = record();
        double integral = integral(
                record, firing.events().start().value(), firing.events().end().value());
        double impulse = integral * Math.PI / 4 * THROAT * THROAT;
        double surface = 2
                * (Math.PI * CORE * LENGTH + Math.PI / 2 * (OUTER * OUTER - CORE * CORE))
                / (Math.PI / 4 * THROAT * THROAT);
        double fitted = law.rateAtReference().value()
                * Math.pow(
                        point.pressure().value() / law.referencePressure().value(),
                        law.exponent().value());
        List<List<String>> rows = List.of(
                List.of(
                        "record",
                        "`traces/" + ID + ".csv`, time and gauge pressure",
                        record.length + " samples, one each 2 ms"),
                List.of(
                        "trace",
                        "subtract the zero before ignition, add the ambient pressure of 98.6 kPa",
                        "zero " + NumberFormat.significant(1e3 * zero(record), 3) + " kPa, highest pressure "
                                + of(firing.maxPressure(), 3)),
                List.of(
                        "grain",
                        "web w = (D − d)/2 = (37.98 − 14.08)/2 mm; ratio of burning surface to throat area at the start",
                        "w = " + of(firing.web(), 4) + ", K_n = " + NumberFormat.significant(surface, 3)),
                List.of(
                        "events",
                        "A begin, B ignition of the web, E burnout of the mean web, G end",
                        at(firing.events().start()) + ", " + at(firing.events().ignition()) + ", "
                                + at(firing.events().webBurnout()) + ", "
                                + at(firing.events().end()) + " s"),
                List.of(
                        "mass balance",
                        "c* = (∫ P dt from A to G) · A_t / mass: the value with which all propellant is gone at G",
                        NumberFormat.significant(integral, 3) + " MPa s · "
                                + NumberFormat.significant(Math.PI / 4 * THROAT * THROAT, 4) + " mm² / "
                                + NumberFormat.significant(1e3 * MASS, 4) + " g = "
                                + NumberFormat.significant(impulse / MASS, 3) + " m/s"),
                List.of(
                        "rate",
                        "by the mass balance: web over time, from 5 to 90 % of the web",
                        NumberFormat.significant(0.85 * firing.web().value(), 4) + " mm / "
                                + NumberFormat.significant(
                                        0.85
                                                * firing.web().value()
                                                / firing.rate().massBalance().value(),
                                        4)
                                + " s = " + of(firing.rate().massBalance(), 4)),
                List.of(
                        "rate, second way",
                        "thickness over time, (w − x(B)) / (E − B)",
                        NumberFormat.significant(
                                        firing.rate().thicknessTime().value()
                                                * firing.burnTime().value(),
                                        4)
                                + " mm / "
                                + NumberFormat.significant(firing.burnTime().value(), 4) + " s = "
                                + of(firing.rate().thicknessTime(), 4)),
                List.of(
                        "pressure",
                        "average over the same stretch: the pressure at which a law with the fitted n gives the mean rate",
                        of(point.pressure(), 4) + " absolute"),
                List.of(
                        "uncertainty",
                        "each input changed by its uncertainty, the reduction repeated; the changes added as squares",
                        "± " + NumberFormat.significant(point.rate().std(), 2) + " mm/s; the largest: "
                                + largest(firing)),
                List.of(
                        "law",
                        "r = a·Pⁿ through this point and nine others",
                        "a = " + NumberFormat.significant(law.coefficient().value(), 4) + " mm/s at 1 MPa, n = "
                                + NumberFormat.significant(law.exponent().value(), 3)),
                List.of(
                        "residual",
                        "measured rate against that of the law at this pressure",
                        String.format(
                                Locale.ROOT,
                                "the law gives %s · %s^%s = %s mm/s; measured %+.1f %%, %.1f standard deviations",
                                NumberFormat.significant(law.coefficient().value(), 4),
                                NumberFormat.significant(point.pressure().value(), 4),
                                NumberFormat.significant(law.exponent().value(), 3),
                                NumberFormat.significant(fitted, 4),
                                100 * (point.rate().value() / fitted - 1),
                                point.standardizedResidual())),
                List.of(
                        "page",
                        "the formula at the top of the page, with its interval at "
                                + NumberFormat.plain(100 * law.coefficient().level(), 3) + " %",
                        "a from " + NumberFormat.significant(law.coefficient().low(), 4) + " to "
                                + NumberFormat.significant(law.coefficient().high(), 4)));
        return "| step | what happens | " + ID + " |\n| --- | --- | --- |\n"
                + rows.stream()
                        .map(row -> "| " + String.join(" | ", row) + " |\n")
                        .collect(Collectors.joining());
    }

    /** Time [s] and gauge pressure [MPa], as they stand in the file. */
    private static double[][] record() throws IOException {
        return Files.readAllLines(SAMPLE.resolve("traces").resolve(ID + ".csv")).stream()
                .skip(1)
                .map(line -> Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    private static double zero(double[][] record) {
        double[] quiet = Arrays.stream(record)
                .filter(sample -> sample[0] < 0.28)
                .mapToDouble(sample -> sample[1])
                .sorted()
                .toArray();
        return quiet[quiet.length / 2];
    }

    /** By hand: the trapezoids of the absolute pressure of the samples from one time to another [MPa s]. */
    private static double integral(double[][] record, double from, double to) {
        double sum = 0;
        for (int i = 1; i < record.length; i++) {
            double start = Math.max(from, record[i - 1][0]);
            double end = Math.min(to, record[i][0]);
            if (end > start) {
                sum += (end - start) * ((record[i - 1][1] + record[i][1]) / 2 - zero(record) + 0.0986);
            }
        }
        return sum;
    }

    private static String largest(Firing firing) {
        return firing.budget().stream()
                .sorted(Comparator.comparingDouble(BudgetLine::share).reversed())
                .limit(2)
                .map(line -> line.source() + " " + NumberFormat.significant(100 * line.contribution(), 2) + " %")
                .collect(Collectors.joining(", "));
    }

    private static String of(Quantity quantity, int digits) {
        return NumberFormat.significant(quantity.value(), digits) + " " + quantity.unit();
    }

    private static String at(Quantity time) {
        return NumberFormat.decimals(time.value(), 3);
    }
}
