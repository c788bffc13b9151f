package io.burnlaw.report.document;

/**
 * Doubles of at most six decimals as text, which loggers write by the thousand. The text is that of
 * {@link Double#toString(double)} of a Java that gives the shortest one: two decimals of at most fifteen digits are never
 * the same double, so that one that is found is the only one, and the shortest once the zeros at its end are gone.
 */
final class FewDecimals {

    /** Characters that a text may need. */
    static final int LONGEST = 16;

    private static final double LEAST = 1e-3;
    private static final double MOST = 1e7;
    private static final int DECIMALS = 6;
    private static final double MILLION = 1e6;

    private FewDecimals() {}

    /**
     * Writes a number.
     *
     * @param value any
     * @param text  of {@link #LONGEST} characters at least, written from its start
     * @return how many characters; 0 if the number is none of these, or is written with an exponent
     */
    static int write(double value, char[] text) {
        double size = Math.abs(value);
        if (!(size >= LEAST && size < MOST)) {
            return 0;
        }
        double whole = Math.rint(size * MILLION);
        // the division is exact but for its rounding: it gives the double that reading the decimal gives
        if (whole / MILLION != size) {
            return 0;
        }
        long millionths = (long) whole;
        int from = value < 0 ? 1 : 0;
        if (value < 0) {
            text[0] = '-';
        }
        int units = (int) (millionths / (long) MILLION);
        int point = from + digitsOf(units);
        decimal(units, text, from, point);
        text[point] = '.';
        int end = point + 1 + DECIMALS;
        decimal((int) (millionths % (long) MILLION), text, point + 1, end);
        while (text[end - 1] == '0' && end > point + 2) {
            end--;
        }
        return end;
    }

    private static int digitsOf(int units) {
        int digits = 1;
        for (int left = units / 10; left > 0; left /= 10) {
            digits++;
        }
        return digits;
    }

    private static void decimal(int number, char[] text, int from, int end) {
        int left = number;
        for (int i = end - 1; i >= from; i--) {
            text[i] = (char) ('0' + left % 10);
            left /= 10;
        }
    }
}
