package io.burnlaw.cli;

import io.burnlaw.report.wording.ShownUnits;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tech.tablesaw.api.Table;

/**
 * A table as lines of text, its columns set apart, what stands in them to the right. Tablesaw would print the same, but in
 * the character set of the machine, which may lack ±.
 *
 * @param title    above it, in the middle
 * @param rows     as long as there are columns
 */
record TerminalTable(String title, List<String> headings, List<List<String>> rows) {

    private static final int WIDE = 2;
    private static final int CLOSE = 1;

    static TerminalTable of(Table table) {
        return new TerminalTable(
                table.name(),
                table.columnNames(),
                IntStream.range(0, table.rowCount())
                        .mapToObj(row -> IntStream.range(0, table.columnCount())
                                .mapToObj(column -> table.getString(row, column))
                                .toList())
                        .toList());
    }

    /** {@return the lines, the last one without an end} */
    String text() {
        return text(widths(), WIDE);
    }

    /**
     * The lines of a table that fits: set closer, then without columns until it does.
     *
     * @param width columns of the terminal
     * @param drop  headings in the order in which they are left out
     * @return the lines, the last one without an end; what was left out is named below
     */
    String text(int width, List<String> drop, ShownUnits units) {
        TerminalTable fitted = in(units);
        if (total(fitted.widths(), WIDE) <= width) {
            return fitted.text();
        }
        List<String> without = new ArrayList<>();
        for (String heading : drop.stream().map(units::text).toList()) {
            if (total(fitted.widths(), CLOSE) > width && fitted.headings.contains(heading)) {
                fitted = fitted.without(heading);
                without.add(heading);
            }
        }
        return fitted.text(fitted.widths(), CLOSE)
                + (without.isEmpty() ? "" : "\nno room for: " + String.join("; ", without));
    }

    private TerminalTable in(ShownUnits units) {
        return new TerminalTable(
                title,
                headings.stream().map(units::text).toList(),
                rows.stream()
                        .map(row -> IntStream.range(0, row.size())
                                .mapToObj(i -> units.cell(headings.get(i), row.get(i)))
                                .toList())
                        .toList());
    }

    private TerminalTable without(String heading) {
        int left = headings.indexOf(heading);
        return new TerminalTable(
                title,
                others(headings, left),
                rows.stream().map(row -> others(row, left)).toList());
    }

    private static List<String> others(List<String> cells, int left) {
        return IntStream.range(0, cells.size())
                .filter(i -> i != left)
                .mapToObj(cells::get)
                .toList();
    }

    private int[] widths() {
        return IntStream.range(0, headings.size())
                .map(column -> Stream.concat(Stream.of(headings), rows.stream())
                        .mapToInt(row -> row.get(column).length())
                        .max()
                        .orElse(0))
                .toArray();
    }

    /** The first column begins behind one blank, whatever the distance of the others. */
    private static int total(int[] widths, int apart) {
        return IntStream.of(widths).map(each -> each + 2 * apart + 1).sum() - apart + 1;
    }

    private String text(int[] widths, int apart) {
        int width = total(widths, apart);
        StringBuilder text = new StringBuilder();
        text.append(centred(title, width)).append('\n');
        line(headings, widths, true, apart, text);
        text.append('\n').append("-".repeat(width));
        for (List<String> row : rows) {
            text.append('\n');
            line(row, widths, false, apart, text);
        }
        return text.toString();
    }

    private static void line(List<String> cells, int[] widths, boolean centred, int apart, StringBuilder text) {
        for (int column = 0; column < widths.length; column++) {
            String cell = cells.get(column);
            text.append(column == 0 ? " " : " ".repeat(apart))
                    .append(centred ? centred(cell, widths[column]) : " ".repeat(widths[column] - cell.length()) + cell)
                    .append(" ".repeat(apart))
                    .append('|');
        }
    }

    private static String centred(String words, int width) {
        int left = Math.max(0, (width - words.length()) / 2);
        return " ".repeat(left) + words + " ".repeat(Math.max(0, width - words.length() - left));
    }
}
