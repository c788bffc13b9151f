package io.burnlaw.trace.reading;

import static io.burnlaw.trace.reading.CellKinds.BLANK;
import static io.burnlaw.trace.reading.CellKinds.COMMA;
import static io.burnlaw.trace.reading.CellKinds.KIND;
import static io.burnlaw.trace.reading.CellKinds.ODD;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Problem;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;

/** Numbers from the bytes of cells where they lie, and what was no number. */
final class CellNumbers {

    /** So many lines of text after the last numbers are a footer. */
    private static final int LONGEST_FOOTER = 100;

    private final String file;
    private final LineBuffer lines;
    private final byte[] buffer;
    private final boolean decimalComma;
    /** Index of the column of clock times; -1 where times are plain numbers. */
    private final int clockColumn;

    private final ClockTime clock = new ClockTime();
    private Problem bad;
    private int badLines;
    /** The cell of the present row that is no number. */
    private Problem inRow;

    private boolean otherDecimalSign;

    CellNumbers(String file, LineBuffer lines, boolean decimalComma, int clockColumn) {
        this.file = file;
        this.lines = lines;
        this.buffer = lines.bytes();
        this.decimalComma = decimalComma;
        this.clockColumn = clockColumn;
    }

    /** {@return the first cell of a row of text; empty where there was none} */
    Optional<Problem> bad() {
        return Optional.ofNullable(bad);
    }

    /** {@return whether a line up to here was a row of text} */
    boolean anyBad() {
        return badLines > 0;
    }

    /** The number in a cell, or NaN where there is no reading. */
    double cell(int start, int end, int kinds, int column) throws Refusal {
        if (column == clockColumn) {
            return stamp(start, end, column);
        }
        int from = start;
        int to = end;
        if ((kinds & (BLANK | ODD)) != 0) {
            while (from < to && KIND[buffer[from] & 0xFF] == BLANK) {
                from++;
            }
            while (to > from && KIND[buffer[to - 1] & 0xFF] == BLANK) {
                to--;
            }
        }
        if (from == to) {
            return Double.NaN;
        }
        if ((kinds & ODD) != 0) {
            return odd(from, to, column);
        }
        if ((kinds & COMMA) != 0) {
            if (!decimalComma || hasPoint(from, to)) {
                return odd(from, to, column);
            }
            for (int i = from; i < to; i++) {
                if (buffer[i] == ',') {
                    buffer[i] = '.';
                }
            }
        }
        try {
            double value = JavaDoubleParser.parseDouble(buffer, from, to - from);
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException e) {
            return odd(from, to, column);
        }
    }

    private boolean hasPoint(int from, int to) {
        for (int i = from; i < to; i++) {
            if (buffer[i] == '.') {
                return true;
            }
        }
        return false;
    }

    /** What is neither a plain number nor empty: quoted, a word for "no reading", or not a record at all. */
    private double odd(int from, int to, int column) throws Refusal {
        String text = text(from, to);
        if (text.indexOf('\0') >= 0) {
            throw lines.binary();
        }
        String cell = CellText.unquoted(text);
        if (CellText.isMissing(cell)) {
            return Double.NaN;
        }
        String point = CellText.ungrouped(cell, decimalComma).orElse(decimalComma ? cell.replace(',', '.') : cell);
        if (CellText.isNumber(point, false)) {
            double value = Double.parseDouble(point);
            return Double.isFinite(value) ? value : Double.NaN;
        }
        noNumber(cell, column, "a number", CellText.isNumber(cell, !decimalComma));
        return Double.NaN;
    }

    private double stamp(int from, int to, int column) throws Refusal {
        String cell = CellText.unquoted(text(from, to));
        if (CellText.isMissing(cell)) {
            return Double.NaN;
        }
        OptionalDouble seconds = clock.seconds(cell);
        if (seconds.isEmpty()) {
            noNumber(cell, column, "a time such as 12:03:04.567", false);
        }
        return seconds.orElse(Double.NaN);
    }

    private void noNumber(String cell, int column, String expected, boolean otherSign) {
        inRow = new Problem(
                file,
                lines.line(),
                "column " + (column + 1),
                "the cell is not a number",
                Excerpt.of(cell),
                expected,
                "correct the cell, or cut the file if a second record begins here");
        otherDecimalSign |= otherSign;
    }

    /**
     * Ends a row.
     *
     * @param anyNumber whether it has a number in a column that is needed
     * @return whether it is a row of readings, in which a cell may be missing; else it is text, which is a footer as long
     *         as no readings follow. A number with the other decimal sign is never passed over: the rest could be wrong
     *         by it.
     */
    boolean endOfRow(boolean anyNumber) throws Refusal {
        Problem wrong = inRow;
        boolean readings = wrong == null || anyNumber && !otherDecimalSign;
        inRow = null;
        otherDecimalSign = false;
        if (readings) {
            return true;
        }
        badLines++;
        bad = bad == null ? wrong : bad;
        if (badLines > LONGEST_FOOTER) {
            throw new Refusal(bad);
        }
        return false;
    }

    private String text(int from, int to) {
        return new String(buffer, from, to - from, StandardCharsets.UTF_8);
    }
}
