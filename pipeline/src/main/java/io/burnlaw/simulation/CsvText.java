package io.burnlaw.simulation;

import io.burnlaw.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A table whose columns are only those that some row fills. */
final class CsvText {

    private final List<String> headings = new ArrayList<>();
    private final List<Map<String, String>> rows = new ArrayList<>();

    /** Columns in their order, whether filled or not. */
    CsvText(List<String> headings) {
        this.headings.addAll(headings);
    }

    /** Begins a row. */
    void row() {
        rows.add(new LinkedHashMap<>());
    }

    /** Fills a cell of the last row; a heading that is new goes to the end. */
    void cell(String heading, String text) {
        if (!headings.contains(heading)) {
            headings.add(heading);
        }
        rows.get(rows.size() - 1).put(heading, text);
    }

    /** Takes a column away, whatever its unit. */
    void drop(String name) {
        headings.removeIf(heading -> heading.equals(name) || heading.startsWith(name + " ["));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    String text() {
        List<String> filled = headings.stream()
                .filter(heading -> rows.stream()
                        .anyMatch(row -> !row.getOrDefault(heading, "").isEmpty()))
                .toList();
        StringBuilder text = new StringBuilder(String.join(",", filled)).append('\n');
        for (Map<String, String> row : rows) {
            text.append(filled.stream()
                            .map(heading -> quoted(row.getOrDefault(heading, "")))
                            .collect(Collectors.joining(",")))
                    .append('\n');
        }
        return text.toString();
    }

    private static String quoted(String cell) {
        return cell.matches("[^,\"\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }

    /** Numbers as instruments show them: a fixed number of decimals, or of digits. */
    static final class FixedNumber {

        private FixedNumber() {}

        /** A number with so many decimals. */
        static String decimals(double value, int decimals) {
            return BigDecimal.valueOf(value)
                    .setScale(decimals, RoundingMode.HALF_EVEN)
                    .toPlainString();
        }

        /** A number with so many significant digits, without trailing zeros. */
        static String digits(double value, int digits) {
            BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
            return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        }

        /** The decimals that a column in a unit needs so that its last digit is not above a step in SI. */
        static int decimalsFor(Unit unit, double step) {
            double inUnit = unit.differenceFromSi(step);
            int decimals = 0;
            for (double last = 1; last > inUnit * 1.0000001 && decimals < 9; last /= 10) {
                decimals++;
            }
            return decimals;
        }
    }
}
