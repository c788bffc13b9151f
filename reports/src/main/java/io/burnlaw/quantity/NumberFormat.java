package io.burnlaw.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Writes numbers in sentences: never with more digits than they have. A negative number has a minus sign (U+2212), as
 * on the pages; a terminal gets a hyphen.
 */
public final class NumberFormat {

    private NumberFormat() {}

    /**
     * A value and its interval, all to the decimal place at which the interval's half-width has two significant digits.
     *
     * @param value in the unit that the sentence names
     * @param low   lower end of its interval
     * @param high  upper end of its interval
     * @return such as {@code 6.94 (6.71 to 7.18)}
     */
    public static String withInterval(double value, double low, double high) {
        int place = place((high - low) / 2);
        return at(value, place) + " (" + at(low, place) + " to " + at(high, place) + ")";
    }

    /**
     * A value to the decimal place at which its standard uncertainty has two significant digits.
     *
     * @param value in the unit that the sentence names
     * @return such as {@code 6.94}
     */
    public static String withStd(double value, double std) {
        return at(value, place(std));
    }

    /**
     * A value to a number of significant digits.
     *
     * @param digits at least 1
     * @return without an exponent
     */
    public static String significant(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        return signed(rounded.setScale(Math.max(0, digits - 1 - exponent(rounded)), RoundingMode.HALF_EVEN)
                .toPlainString());
    }

    /**
     * A pressure for a sentence.
     *
     * @param pascal [Pa], finite
     * @return in megapascal, to three significant digits, without the unit
     */
    public static String megapascal(double pascal) {
        return significant(Unit.MEGAPASCAL.fromSi(pascal), 3);
    }

    /**
     * The probability of a test.
     *
     * @param p [1]
     * @return such as {@code p = 0.032}, and below one in a thousand only that
     */
    public static String probability(double p) {
        return p < 1e-3 ? "p < 0.001" : "p = " + significant(p, 2);
    }

    /**
     * A value as somebody may have written it: no zeros at its end.
     *
     * @param digits significant ones at most
     * @return without an exponent
     */
    public static String plain(double value, int digits) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        return rounded.signum() == 0 ? "0" : signed(rounded.stripTrailingZeros().toPlainString());
    }

    /**
     * A value to a number of decimals.
     *
     * @param decimals at least 0
     * @return such as {@code −0.4}
     */
    public static String decimals(double value, int decimals) {
        return at(value, decimals);
    }

    /**
     * A share as per cent.
     *
     * @param share [1]
     * @return such as {@code 2.4 %}
     */
    public static String percent(double share, int digits) {
        return significant(100 * share, digits) + " %";
    }

    /** Two significant digits of the width, and never more than six decimals: no instrument here has more. */
    private static int place(double width) {
        if (!(width > 0) || !Double.isFinite(width)) {
            return 3;
        }
        BigDecimal two = BigDecimal.valueOf(width).round(new MathContext(2, RoundingMode.HALF_EVEN));
        return Math.min(6, 1 - exponent(two));
    }

    private static int exponent(BigDecimal value) {
        return value.precision() - value.scale() - 1;
    }

    private static String at(double value, int place) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(place, RoundingMode.HALF_EVEN);
        return signed((place < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString());
    }

    /** With a minus sign instead of a hyphen. */
    static String signed(String number) {
        return number.startsWith("-") ? "\u2212" + number.substring(1) : number;
    }
}
