package io.burnlaw;

import static org.assertj.core.api.Assertions.assertThat;

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
        long samples = Files.readAllLines(SAMPLE.resolve("traces").resolve(ID + ".csv"))
                        .size()
                - 1L;
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
                        samples + " samples, one each 2 ms"),
                List.of(
                        "trace",
                        "the zero before ignition is taken off; 98.6 kPa of ambient pressure are added",
                        "highest pressure " + of(firing.maxPressure(), 3)),
                List.of(
                        "grain",
                        "web w = (D − d)/2 = (37.98 − 14.08)/2 mm; surface over throat at the start",
                        "w = " + of(firing.web(), 4) + ", K_n = " + NumberFormat.significant(surface, 3)),
                List.of(
                        "events",
                        "A begin, B ignition of the web, E burnout of the mean web, G end",
                        at(firing.events().start()) + ", " + at(firing.events().ignition()) + ", "
                                + at(firing.events().webBurnout()) + ", "
                                + at(firing.events().end()) + " s"),
                List.of(
                        "mass balance",
                        "c* such that all propellant has gone through the nozzle at G",
                        of(firing.characteristicVelocity(), 3)),
                List.of(
                        "rate",
                        "web over time between 5 and 90 % of the web, from the mass balance",
                        of(firing.rate().massBalance(), 4)),
                List.of(
                        "second opinion",
                        "thickness over time, (w − x(B)) / (E − B)",
                        of(firing.rate().thicknessTime(), 4)),
                List.of(
                        "pressure",
                        "averaged over the same stretch so that a law with the fitted n gives the mean rate",
                        of(point.pressure(), 4) + " absolute"),
                List.of(
                        "uncertainty",
                        "each input moved by its own, the reduction done again; the largest of them",
                        "± " + NumberFormat.significant(point.rate().std(), 2) + " mm/s: " + largest(firing)),
                List.of(
                        "law",
                        "r = a·Pⁿ through this point and nine others",
                        "a = " + NumberFormat.significant(law.coefficient().value(), 4) + " mm/s at 1 MPa, n = "
                                + NumberFormat.significant(law.exponent().value(), 3)),
                List.of(
                        "residual",
                        "the law gives " + NumberFormat.significant(fitted, 4) + " mm/s at this pressure",
                        String.format(
                                Locale.ROOT,
                                "%+.1f %% off, %.1f of its standard deviation",
                                100 * (point.rate().value() / fitted - 1),
                                point.standardizedResidual())),
                List.of(
                        "page",
                        "the formula at the top, its interval at "
                                + NumberFormat.plain(100 * law.coefficient().level(), 3) + " %",
                        "a from " + NumberFormat.significant(law.coefficient().low(), 4) + " to "
                                + NumberFormat.significant(law.coefficient().high(), 4)));
        return "| step | what happens | " + ID + " |\n| --- | --- | --- |\n"
                + rows.stream()
                        .map(row -> "| " + String.join(" | ", row) + " |\n")
                        .collect(Collectors.joining());
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
