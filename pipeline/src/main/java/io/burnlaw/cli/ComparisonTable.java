package io.burnlaw.cli;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.DoseTrend;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Comparison.RatioPoint;
import io.burnlaw.report.document.Quantity;
import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Stream;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** Comparisons on a terminal: a table, then each verdict in a sentence. */
final class ComparisonTable {

    private ComparisonTable() {}

    /**
     * Prints the comparisons of a document.
     *
     * @param document at least one comparison in it
     */
    static void print(Characterization document, List<String> caveats, PrintWriter out) {
        out.println(Terminal.safe(document.campaign().title()));
        out.println();
        List<Comparison> compared = document.comparisons().stream()
                .filter(each -> each.tests() != null)
                .toList();
        if (!compared.isEmpty()) {
            out.println(Terminal.safe(ConsoleWriter.fitted(
                    out,
                    TerminalTable.of(table(compared)),
                    List.of("visible from", "p, Holm", "exponent difference", "shared [MPa]"))));
            out.println();
        }
        sentences(document).forEach(sentence -> {
            out.println(Terminal.safe(sentence));
            out.println();
        });
        if (!compared.isEmpty()) {
            out.println(
                    "Bands hold at %s over all shared pressures at once; p is the probability of such a difference by chance, after Holm over all candidates."
                            .formatted(
                                    NumberFormat.plain(100 * document.campaign().confidence(), 4) + " %"));
        }
        caveats.forEach(caveat -> out.println(Terminal.safe(caveat)));
    }

    /**
     * What was found, in words.
     *
     * @param document with or without comparisons
     * @return a sentence or two for each comparison, then for each trend
     */
    static List<String> sentences(Characterization document) {
        return Stream.concat(
                        document.comparisons().stream().map(ComparisonTable::sentence),
                        document.doseTrends().stream().map(DoseTrend::sentence))
                .toList();
    }

    private static String sentence(Comparison comparison) {
        String reason = comparison.notCompared();
        return reason == null ? comparison.verdict() : reason;
    }

    private static Table table(List<Comparison> comparisons) {
        StringColumn candidate = StringColumn.create("candidate");
        StringColumn range = StringColumn.create("shared [MPa]");
        StringColumn pressure = StringColumn.create("at [MPa]");
        StringColumn ratio = StringColumn.create("rate ratio (band)");
        StringColumn exponent = StringColumn.create("exponent difference");
        StringColumn adjusted = StringColumn.create("p, Holm");
        StringColumn smallest = StringColumn.create("visible from");
        StringColumn result = StringColumn.create("difference");
        for (Comparison each : comparisons) {
            List<RatioPoint> points = each.ratio();
            RatioPoint middle = points.get(points.size() / 2);
            candidate.append(each.candidate());
            range.append(pressure(points.get(0)) + " to " + pressure(points.get(points.size() - 1)));
            pressure.append(pressure(middle));
            ratio.append(NumberFormat.withInterval(middle.value(), middle.low(), middle.high()));
            exponent.append(withInterval(each.exponentDifference()));
            adjusted.append(probability(each.tests().adjustedPValue()));
            smallest.append(NumberFormat.percent(each.smallestDetectable(), 2));
            result.append(each.differs() ? "shown" : "not shown");
        }
        return Table.create("comparisons", candidate, range, pressure, ratio, exponent, adjusted, smallest, result);
    }

    private static String pressure(RatioPoint point) {
        return NumberFormat.significant(point.pressure(), 3);
    }

    private static String withInterval(Quantity quantity) {
        return NumberFormat.withInterval(quantity.value(), quantity.low(), quantity.high());
    }

    private static String probability(double value) {
        return value < 1e-4 ? "< 0.0001" : NumberFormat.significant(value, 2);
    }
}
