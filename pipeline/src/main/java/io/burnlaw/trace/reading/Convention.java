package io.burnlaw.trace.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * A way of reading lines of numbers.
 *
 * @param separator    between the cells; {@link #BLANKS} for runs of spaces
 * @param decimalComma whether numbers have a decimal comma
 */
record Convention(char separator, boolean decimalComma) {

    static final char BLANKS = ' ';

    static final List<Convention> ALL = List.of(
            new Convention('\t', false),
            new Convention('\t', true),
            new Convention(';', false),
            new Convention(';', true),
            new Convention(',', false),
            new Convention(',', true),
            new Convention(BLANKS, false),
            new Convention(BLANKS, true));

    /** How many cells a line has, and whether rows of numbers may begin or go on with it. */
    record Kind(int width, boolean begins, boolean goesOn, boolean hasNumber) {

        private static final Kind TOO_NARROW = new Kind(1, false, false, false);
    }

    List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        if (separator == BLANKS) {
            String stripped = line.strip();
            int from = 0;
            for (int i = 0; i <= stripped.length(); i++) {
                if (i == stripped.length() || isBlank(stripped.charAt(i))) {
                    if (i > from || stripped.isEmpty()) {
                        cells.add(CellText.unquoted(stripped.substring(from, i)));
                    }
                    from = i + 1;
                }
            }
            return cells;
        }
        boolean quoted = false;
        int from = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            quoted ^= c == '"';
            if (c == separator && !quoted) {
                cells.add(CellText.unquoted(line.substring(from, i)));
                from = i + 1;
            }
        }
        cells.add(CellText.unquoted(line.substring(from)));
        return cells;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c >= '\t' && c <= '\r';
    }

    /** Whether the line is a single cell to this convention, seen without taking it apart. */
    private boolean isOneCell(String line) {
        if (separator != BLANKS) {
            return line.indexOf(separator) < 0;
        }
        for (int i = 0; i < line.length(); i++) {
            if (isBlank(line.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    /** What stands in a line. */
    Kind kind(String line, int narrowest) {
        if (narrowest > 1 && isOneCell(line)) {
            return Kind.TOO_NARROW;
        }
        List<String> cells = cells(line);
        int numbers = 0;
        for (String cell : cells) {
            numbers += CellText.isNumber(cell, decimalComma) ? 1 : 0;
        }
        // Most lines hold numbers only, or none for this convention: neither needs a look at what else may stand.
        boolean allReadings = numbers == cells.size()
                || numbers > 0 && cells.stream().allMatch(cell -> CellText.isReading(cell, decimalComma));
        boolean begins = allReadings || numbers >= 2 && 2 * numbers >= cells.size();
        boolean goesOn = allReadings || 2 * numbers > cells.size();
        boolean wide = cells.size() >= narrowest;
        return new Kind(cells.size(), wide && begins, wide && goesOn, numbers > 0);
    }
}
