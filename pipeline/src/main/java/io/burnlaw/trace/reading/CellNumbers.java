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

    CellNumbers(String file, LineBuffer lines, boolean decimalComma, int clockColumn) {
        this.file = file;
        this.lines = lines;
        this.buffer = lines.bytes();
        this.decimalComma = decimalComma;
        this.clockColumn = clockColumn;
    }

    /** {@return the first cell that was no number; empty where there was none} */
    Optional<Problem> bad() {
        return Optional.ofNullable(bad);
    }

    /** {@return whether a cell was no number, in any line up to here} */
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
            if (!decimalComma) {
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
        String point = decimalComma ? cell.replace(',', '.') : cell;
        if (CellText.isNumber(point, false)) {
            double value = Double.parseDouble(point);
            return Double.isFinite(value) ? value : Double.NaN;
        }
        noNumber(cell, column, "a number");
        return Double.NaN;
    }

    private double stamp(int from, int to, int column) throws Refusal {
        String cell = CellText.unquoted(text(from, to));
        if (CellText.isMissing(cell)) {
            return Double.NaN;
        }
        OptionalDouble seconds = clock.seconds(cell);
        if (seconds.isEmpty()) {
            noNumber(cell, column, "a time such as 12:03:04.567");
        }
        return seconds.orElse(Double.NaN);
    }

    /** Text after the last numbers is a footer, so it is an error only if numbers follow. */
    private void noNumber(String cell, int column, String expected) throws Refusal {
        badLines++;
        if (bad == null) {
            bad = new Problem(
                    file,
                    lines.line(),
                    "column " + (column + 1),
                    "the cell is not a number",
                    Excerpt.of(cell),
                    expected,
                    "correct the cell, or cut the file if a second record begins here");
        }
        if (badLines > LONGEST_FOOTER) {
            throw new Refusal(bad);
        }
    }

    private String text(int from, int to) {
        return new String(buffer, from, to - from, StandardCharsets.UTF_8);
    }
}
