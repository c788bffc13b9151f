package io.burnlaw.trace.reading;

import static io.burnlaw.trace.reading.CellKinds.BLANK;
import static io.burnlaw.trace.reading.CellKinds.COMMA;
import static io.burnlaw.trace.reading.CellKinds.END;
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

    /**
     * A number as nearly all cells of a record hold it: a sign or none, up to eighteen digits with a decimal point
     * among them or none, and a short exponent or none.
     *
     * <p>Where the digits make a whole number below 2^53 and the power of ten is one of the 22 that a double holds
     * exactly, one multiplication or division gives the double next to the decimal number. Whatever else a cell holds
     * is left to a complete parser; with that one for all cells, a record of a million rows takes about 1.4 times as
     * long to read.
     *
     * <p><b>Source.</b> Clinger, How to read floating point numbers accurately, ACM SIGPLAN Notices 25 (1990) 92, from
     * memory.
     */
    static final class PlainNumber {

        private static final int MOST_DIGITS = 18;
        private static final long EXACT = 1L << 53;

        private static final double[] POWERS = {
            1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
            1e20, 1e21, 1e22
        };

        private final byte point;
        private final byte[] kinds;
        private double value;

        /**
         * For the cells of one record.
         *
         * @param point decimal point or comma
         * @param kinds of the bytes, by {@link CellKinds#kindsWith}
         */
        PlainNumber(byte point, byte[] kinds) {
            this.point = point;
            this.kinds = kinds;
        }

        /** {@return what was read last} */
        double value() {
            return value;
        }

        /**
         * Reads a number.
         *
         * @param bytes with an end of a line somewhere behind the cell
         * @param from  first byte of the cell
         * @return the byte behind the cell; -1 where the cell holds anything else, and the value is of no use
         */
        int read(byte[] bytes, int from) {
            int at = from;
            byte b = bytes[at];
            boolean negative = b == '-';
            if (negative || b == '+') {
                b = bytes[++at];
            }
            long digits = 0;
            int begin = at;
            while (b >= '0' && b <= '9') {
                digits = 10 * digits + (b - '0');
                b = bytes[++at];
            }
            int count = at - begin;
            int power = 0;
            if (b == point) {
                int behind = at + 1;
                b = bytes[++at];
                while (b >= '0' && b <= '9') {
                    digits = 10 * digits + (b - '0');
                    b = bytes[++at];
                }
                power = behind - at;
                count -= power;
            }
            if ((b == 'e' || b == 'E') && count > 0) {
                b = bytes[++at];
                boolean small = b == '-';
                if (small || b == '+') {
                    b = bytes[++at];
                }
                if (b < '0' || b > '9') {
                    return -1;
                }
                int exponent = b - '0';
                b = bytes[++at];
                if (b >= '0' && b <= '9') {
                    exponent = 10 * exponent + (b - '0');
                    b = bytes[++at];
                }
                power += small ? -exponent : exponent;
            }
            // A wrong sum of too many digits is never looked at.
            if (kinds[b & 0xFF] != END || count < 1 || count > MOST_DIGITS || digits > EXACT || Math.abs(power) > 22) {
                return -1;
            }
            double size = power < 0 ? digits / POWERS[-power] : digits * POWERS[power];
            value = negative ? -size : size;
            return at;
        }
    }
}
