package io.burnlaw.trace.reading;

import static io.burnlaw.trace.reading.CellKinds.END;

/**
 * A number as nearly all cells of a record hold it: a sign or none, up to eighteen digits with a decimal point among
 * them or none, and a short exponent or none.
 *
 * <p>Where the digits make a whole number below 2^53 and the power of ten is one of the 22 that a double holds exactly,
 * one multiplication or division gives the double next to the decimal number. Whatever else a cell holds is left to a
 * complete parser.
 *
 * <p><b>Source.</b> Clinger, How to read floating point numbers accurately, ACM SIGPLAN Notices 25 (1990) 92, from
 * memory.
 */
final class PlainNumber {

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
