package io.burnlaw.cli;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tech.tablesaw.api.Table;

/**
 * A table as lines of text, its columns set apart, what stands in them to the right. Tablesaw would print the same, but in
 * the character set of the machine, which may lack ±.
 *
 * @param title    above it, in the middle
 * @param headings of the columns
 * @param rows     as long as there are columns
 */
record TerminalTable(String title, List<String> headings, List<List<String>> rows) {

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
        int[] widths = IntStream.range(0, headings.size())
                .map(column -> Stream.concat(Stream.of(headings), rows.stream())
                        .mapToInt(row -> row.get(column).length())
                        .max()
                        .orElse(0))
                .toArray();
        int width = IntStream.of(widths).map(each -> each + 5).sum() - 1;
        StringBuilder text = new StringBuilder();
        text.append(centred(title, width)).append('\n');
        line(headings, widths, true, text);
        text.append('\n').append("-".repeat(width));
        for (List<String> row : rows) {
            text.append('\n');
            line(row, widths, false, text);
        }
        return text.toString();
    }

    private static void line(List<String> cells, int[] widths, boolean centred, StringBuilder text) {
        for (int column = 0; column < widths.length; column++) {
            String cell = cells.get(column);
            text.append(column == 0 ? " " : "  ")
                    .append(centred ? centred(cell, widths[column]) : " ".repeat(widths[column] - cell.length()) + cell)
                    .append("  |");
        }
    }

    private static String centred(String words, int width) {
        int left = Math.max(0, (width - words.length()) / 2);
        return " ".repeat(left) + words + " ".repeat(Math.max(0, width - words.length() - left));
    }
}
