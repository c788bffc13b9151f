package io.burnlaw.cli;

import io.burnlaw.report.wording.ShownUnits;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A table as lines of text, its columns set apart, what stands in them to the right. Tablesaw would print the same, but in
 * the character set of the machine, which may lack ±.
 *
 * @param title   above it, in the middle
 * @param rows    how many
 * @param columns cells by heading, from left to right; as many as there are rows
 */
record TerminalTable(String title, int rows, Map<String, List<String>> columns) {

    private static final int WIDE = 2;
    private static final int CLOSE = 1;

    /** A table without columns. */
    static TerminalTable of(String title, int rows) {
        return new TerminalTable(title, rows, Map.of());
    }

    /** The same with a column to the right, whose cells are made of the numbers of the rows. */
    TerminalTable with(String heading, IntFunction<String> cell) {
        Map<String, List<String>> more = new LinkedHashMap<>(columns);
        more.put(heading, IntStream.range(0, rows).mapToObj(cell).toList());
        return new TerminalTable(title, rows, more);
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
            if (total(fitted.widths(), CLOSE) > width && fitted.columns.containsKey(heading)) {
                fitted = fitted.without(heading);
                without.add(heading);
            }
        }
        return fitted.text(fitted.widths(), CLOSE)
                + (without.isEmpty() ? "" : "\ncolumns left out: " + String.join("; ", without));
    }

    private TerminalTable in(ShownUnits units) {
        Map<String, List<String>> shown = new LinkedHashMap<>();
        columns.forEach((heading, cells) -> shown.put(
                units.text(heading),
                cells.stream().map(cell -> units.cell(heading, cell)).toList()));
        return new TerminalTable(title, rows, shown);
    }

    private TerminalTable without(String heading) {
        Map<String, List<String>> fewer = new LinkedHashMap<>(columns);
        fewer.remove(heading);
        return new TerminalTable(title, rows, fewer);
    }

    private int[] widths() {
        return columns.entrySet().stream()
                .mapToInt(column -> Stream.concat(Stream.of(column.getKey()), column.getValue().stream())
                        .mapToInt(String::length)
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
        line(List.copyOf(columns.keySet()), widths, true, apart, text);
        text.append('\n').append("-".repeat(width));
        for (int i = 0; i < rows; i++) {
            int row = i;
            text.append('\n');
            line(columns.values().stream().map(cells -> cells.get(row)).toList(), widths, false, apart, text);
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
