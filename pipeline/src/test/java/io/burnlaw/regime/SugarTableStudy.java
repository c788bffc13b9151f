package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.regime.Regimes.RegimeKind;
import io.burnlaw.validation.StudyReport;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** How often the breaks and words of the published sugar tables come back from scattered points. */
class SugarTableStudy {

    private static final int SEEDS = 40;
    private static final int POINTS = 60;
    private static final double SCATTER = 0.02;

    private final StringBuilder text = new StringBuilder();

    @Test
    void breaksAndWordsOfThePublishedTablesComeBack() {
        say(String.format(Locale.ROOT, """
                ## Published laws of sugar propellants, from scattered points

                R. Nakka's strand-burner tables (1999; from memory, so a soft check) of two potassium-nitrate sugar \
                propellants, five power laws each with jumps of up to 3 %% between them. %d points with a scatter of %.0f %% \
                are sampled from a table over its whole range, and the regimes searched, %d seeds each. Counted: breaks \
                within 10 %%, and the word for the regime in the middle of a row.
                """, POINTS, 100 * SCATTER, SEEDS));
        say("| table | points | slow to plateau | plateau to steep | plateau named | mesa named |");
        say("| --- | --- | --- | --- | --- | --- |");
        // a word's row, from 0; at least so many of 40 for each column
        row("dextrose", "kndx_piecewise.csv", SugarTable.Spread.EACH_ROW, new int[] {0, 1, 1, 3}, 36, 36, 36, 28);
        row("dextrose", "kndx_piecewise.csv", SugarTable.Spread.EVEN, new int[] {0, 1, 1, 3}, 36, 36, 36, 0);
        row("sorbitol", "knsb_piecewise.csv", SugarTable.Spread.EACH_ROW, new int[] {0, 2, 2, 1}, 36, 34, 34, 38);
        row("sorbitol", "knsb_piecewise.csv", SugarTable.Spread.EVEN, new int[] {0, 2, 2, 1}, 36, 34, 34, 38);
        say("""

                The mesa of the dextrose table (n = -0.15) reaches from 5.9 to 8.5 MPa only. Twelve points there leave the \
                exponent a standard error of 0.06; spread evenly in ln P over the whole table, it gets five points and the \
                law above it four, and mostly both are found as one plateau. More firings there, not another test, would separate them.
                """);
        StudyReport.section(52, "sugar-tables", text.toString());
    }

    /** Rows: the one that the first break ends, the one that the second ends, that of the plateau, that of the mesa. */
    private void row(String name, String file, SugarTable.Spread spread, int[] rows, int... least) {
        SugarTable table = SugarTable.read(file);
        List<Regimes> found = LongStream.rangeClosed(1, SEEDS)
                .mapToObj(seed ->
                        RegimeSearch.search(table.points(POINTS, spread, SCATTER, seed), RegimeOptions.defaults(seed)))
                .toList();
        long[] counts = {
            count(found, breakNear(table.end(rows[0]))),
            count(found, breakNear(table.end(rows[1]))),
            count(found, named(table, rows[2], RegimeKind.PLATEAU)),
            count(found, named(table, rows[3], RegimeKind.MESA))
        };
        say(String.format(
                Locale.ROOT,
                "| %s | %s | %d | %d | %d | %d |",
                name,
                spread == SugarTable.Spread.EACH_ROW ? "12 a law" : "evenly in ln P",
                counts[0],
                counts[1],
                counts[2],
                counts[3]));
        for (int i = 0; i < counts.length; i++) {
            assertThat(counts[i]).as("%s, %s, column %d", name, spread, i).isGreaterThanOrEqualTo(least[i]);
        }
    }

    private static long count(List<Regimes> found, Predicate<Regimes> claim) {
        return found.stream().filter(claim).count();
    }

    private static Predicate<Regimes> breakNear(double megapascal) {
        return found ->
                found.breaks().stream().anyMatch(each -> Math.abs(each.pressure() / (1e6 * megapascal) - 1) < 0.1);
    }

    private static Predicate<Regimes> named(SugarTable table, int row, RegimeKind kind) {
        return found -> found.at(table.middle(row)).kind() == kind;
    }

    private void say(String line) {
        text.append(line).append('\n');
    }
}
