package io.burnlaw.cli;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.DoseTrend;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.table.ComparedTable;
import io.burnlaw.report.table.TypedTable;
import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Stream;

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
        TypedTable<Comparison> compared = ComparedTable.of(document);
        if (compared.size() > 0) {
            out.println(Terminal.safe(ConsoleWriter.fitted(
                    out,
                    shown(compared),
                    List.of("detectable from", "p, Holm", "exponent difference", "shared [MPa]"))));
            out.println();
        }
        sentences(document).forEach(sentence -> {
            out.println(Terminal.safe(sentence));
            out.println();
        });
        if (compared.size() > 0) {
            out.println(
                    "Bands have a confidence of %s for all shared pressures at once; p is the probability of such a difference by chance, corrected for all candidates (Holm)."
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

    private static TerminalTable shown(TypedTable<Comparison> table) {
        return TerminalTable.of("comparisons", table.size())
                .with("candidate", row -> table.words("candidate", row))
                .with(
                        "shared [MPa]",
                        row -> number(table, "shared_low", row, 3) + " to " + number(table, "shared_high", row, 3))
                .with("at [MPa]", row -> number(table, "pressure", row, 3))
                .with("rate ratio (band)", row -> withInterval(table.quantity("ratio", row)))
                .with("exponent difference", row -> withInterval(table.quantity("exponent_difference", row)))
                .with("p, Holm", row -> probability(table.number("probability", row)))
                .with("detectable from", row -> NumberFormat.percent(table.number("smallest_detectable", row), 2))
                .with("difference", row -> table.truth("differs", row) ? "shown" : "not shown");
    }

    private static String number(TypedTable<?> table, String column, int row, int digits) {
        return NumberFormat.significant(table.number(column, row), digits);
    }

    private static String withInterval(Quantity quantity) {
        return NumberFormat.withInterval(quantity.value(), quantity.low(), quantity.high());
    }

    private static String probability(double value) {
        return value < 1e-4 ? "< 0.0001" : NumberFormat.significant(value, 2);
    }
}
