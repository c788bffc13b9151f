package io.burnlaw.report.wording;

import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * The only place that rounds: an uncertainty to two significant digits, its value to the same place (JCGM 100:2008,
 * 7.2.6). If there is an interval as well, the coarser of its half-width and the uncertainty decides: with few points
 * an interval is much wider than two standard uncertainties. A number whose uncertainty is not known is shown with
 * three digits if it was computed; with four at most, and no more than it has, if somebody stated it.
 */
public final class Numbers {

    private static final int COMPUTED = 3;
    private static final int STATED = 4;
    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

    private Numbers() {}

    /**
     * {@return value with unit, and plus-minus its standard uncertainty or its interval where known, such as {@code
     * 6.94 ± 0.11 mm/s}, or {@code 6.94 mm/s (95 %: 6.71 to 7.18)}, or a dash for null}
     */
    public static String of(@Nullable Quantity quantity) {
        if (quantity == null) {
            return "\u2013";
        }
        if (hasInterval(quantity)) {
            return value(quantity) + unit(quantity) + " (" + interval(quantity) + ")";
        }
        return withStd(quantity);
    }

    /**
     * {@return value with its standard uncertainty and unit, whether or not it has an interval, such as {@code 6.94 ±
     * 0.11 mm/s}}
     */
    public static String withStd(@Nullable Quantity quantity) {
        if (quantity == null) {
            return "\u2013";
        }
        return shown(quantity, place(quantity)) + unit(quantity);
    }

    /**
     * {@return value with its standard uncertainty, for a column whose heading has the unit, such as {@code 6.94 ±
     * 0.11}}
     */
    public static String bare(@Nullable Quantity quantity) {
        return quantity == null
                ? "\u2013"
                : withStd(new Quantity(
                        quantity.value(), null, quantity.low(), quantity.high(), quantity.level(), quantity.std()));
    }

    /** {@return the value alone, with the digits that its uncertainty leaves, such as {@code 6.94}} */
    public static String value(@Nullable Quantity quantity) {
        return quantity == null ? "\u2013" : digits(quantity.value(), place(quantity), COMPUTED);
    }

    /** {@return a quantity that somebody stated, with its unit, such as {@code 12.35 mm}} */
    public static String stated(@Nullable Quantity quantity) {
        if (quantity == null) {
            return "\u2013";
        }
        Double std = quantity.std();
        if (std == null || !(std > 0)) {
            return written(quantity.value(), STATED) + unit(quantity);
        }
        // nobody who writes 1.80 ± 0.01 has said that it is not 0.011; ten digits drop what the change of units added
        int place = Math.min(
                place(std),
                new BigDecimal(std, new MathContext(10)).stripTrailingZeros().scale());
        return shown(quantity, place) + unit(quantity);
    }

    /**
     * A number that somebody stated.
     *
     * @param significant most digits shown
     * @return without zeros at its end
     */
    public static String written(double value, int significant) {
        BigDecimal rounded = significant(value, significant);
        return plain(rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros());
    }

    /**
     * A value to the place of another one of the same unit, for a column in which only some have an uncertainty.
     *
     * @param like     whose uncertainty decides, or null
     * @return value with the unit
     */
    public static String like(@Nullable Quantity quantity, @Nullable Quantity like) {
        if (quantity == null || place(quantity) != null || like == null) {
            return withStd(quantity);
        }
        return digits(quantity.value(), place(like), COMPUTED) + unit(quantity);
    }

    /**
     * {@return the interval alone, with its level, to the place of the value, such as {@code 95 %: 6.71 to 7.18}, or a
     * dash where there is none}
     */
    public static String interval(@Nullable Quantity quantity) {
        if (quantity == null || !hasInterval(quantity)) {
            return "\u2013";
        }
        String level = quantity.level() == null ? "" : level(quantity.level()) + ": ";
        return level + range(quantity);
    }

    /** {@return the ends of the interval alone, such as {@code 6.71 to 7.18}, or a dash where there is none} */
    public static String range(@Nullable Quantity quantity) {
        if (quantity == null || quantity.low() == null || quantity.high() == null) {
            return "\u2013";
        }
        Integer place = place(quantity);
        return digits(quantity.low(), place, COMPUTED) + " to " + digits(quantity.high(), place, COMPUTED);
    }

    /** {@return a bare number that was computed, such as {@code 0.0123}, {@code 5.50} or {@code 1.23 × 10⁻⁷}} */
    public static String number(@Nullable Double value, int significant) {
        return value == null ? "\u2013" : digits(value, null, significant);
    }

    /**
     * A number to a place.
     *
     * @return such as {@code 0.025}
     */
    public static String decimals(double value, int decimals) {
        return plain(atPlace(value, decimals));
    }

    /**
     * A share as per cent, that was computed.
     *
     * @param share [1], or null
     * @return such as {@code 1.3 %}
     */
    public static String percent(@Nullable Double share, int significant) {
        return number(share == null ? null : Double.valueOf(share * 100), significant)
                + (share == null ? "" : "\u00a0%");
    }

    /**
     * A share as per cent, where small ones do not matter.
     *
     * @param share [1]
     * @param least per cent below which only that is said
     * @return such as {@code 59 %} or {@code < 0.1 %}
     */
    public static String percentAbove(double share, double least) {
        return Math.abs(share) * 100 < least ? "<\u00a0" + written(least, 2) + "\u00a0%" : percent(share, 2);
    }

    /**
     * A share that somebody stated, such as a level of confidence or a fraction by mass, as per cent.
     *
     * @param share [1]
     * @return such as {@code 95 %}
     */
    public static String level(double share) {
        return written(share * 100, STATED) + "\u00a0%";
    }

    /**
     * The probability of a test.
     *
     * @param p [1], or null
     * @return such as {@code 0.032}, and below one in a thousand only that
     */
    public static String probability(@Nullable Double p) {
        if (p == null) {
            return "\u2013";
        }
        return p < 1e-3 ? "<\u00a00.001" : number(p, 2);
    }

    /**
     * The ends of an interval, to the place that its width allows.
     *
     * @return such as {@code 0.310 to 0.350}
     */
    public static String ends(double low, double high) {
        return range(new Quantity((low + high) / 2, null, low, high, null, null));
    }

    /**
     * A value within its interval.
     *
     * @param low lower end, or null
     * @param high upper end, or null
     * @return such as {@code 0.331 (0.315 to 0.347)}
     */
    public static String within(double value, @Nullable Double low, @Nullable Double high) {
        Quantity quantity = new Quantity(value, null, low, high, null, null);
        return value(quantity) + (hasInterval(quantity) ? " (" + range(quantity) + ")" : "");
    }

    private static boolean hasInterval(Quantity quantity) {
        return quantity.low() != null && quantity.high() != null;
    }

    /** Decimal place to which a quantity is known, or null where nobody can say. */
    private static @Nullable Integer place(Quantity quantity) {
        Double std = quantity.std();
        Integer place = std != null && std > 0 ? Integer.valueOf(place(std)) : null;
        if (quantity.low() != null && quantity.high() != null && quantity.high() > quantity.low()) {
            int ofInterval = place((quantity.high() - quantity.low()) / 2);
            return place == null ? Integer.valueOf(ofInterval) : Integer.valueOf(Math.min(place, ofInterval));
        }
        return place;
    }

    private static int place(double uncertainty) {
        BigDecimal two = significant(uncertainty, 2);
        return two.precision() == 1 ? two.scale() + 1 : two.scale();
    }

    /** Value and standard uncertainty to one place; an interval never makes the uncertainty vanish in it. */
    private static String shown(Quantity quantity, @Nullable Integer place) {
        Double std = quantity.std();
        String value = digits(quantity.value(), place, COMPUTED);
        if (std == null || !(std > 0) || place == null) {
            return value;
        }
        BigDecimal rounded = atPlace(std, place);
        return value + " \u00b1 " + plain(rounded.signum() == 0 ? atPlace(std, place(std)) : rounded);
    }

    private static BigDecimal atPlace(double value, int place) {
        BigDecimal near = nearest(value, place);
        return near != null ? near : new BigDecimal(value).setScale(place, RoundingMode.HALF_EVEN);
    }

    private static BigDecimal significant(double value, int digits) {
        int place = digits - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
        BigDecimal near = nearest(value, place);
        // the logarithm of a number beside a power of ten, or rounding up to one, makes it a digit more or less
        return near != null && near.precision() == digits
                ? near
                : new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    }

    /**
     * The value to a place where a product of doubles is sure to tell it, else null: all digits of a double are dozens,
     * and a page has hundreds of numbers. The power of ten is exact, so that the product is off by half of its last bit.
     */
    private static @Nullable BigDecimal nearest(double value, int place) {
        if (!(place >= 0 && place < POWERS.length)) {
            return null;
        }
        double shifted = value * POWERS[place];
        double whole = Math.rint(shifted);
        return Math.abs(shifted) < 1e9 && Math.abs(shifted - whole) < 0.499
                ? BigDecimal.valueOf((long) whole, place)
                : null;
    }

    private static String digits(double value, @Nullable Integer place, int significant) {
        if (place != null) {
            return plain(atPlace(value, place));
        }
        BigDecimal rounded = significant(value, significant);
        if (rounded.signum() == 0) {
            return "0";
        }
        return plain(rounded.setScale(rounded.scale() + significant - rounded.precision()));
    }

    private static String plain(BigDecimal number) {
        int magnitude = number.precision() - number.scale() - 1;
        if (number.signum() != 0 && (magnitude < -4 || magnitude > 6)) {
            BigDecimal mantissa = number.movePointLeft(magnitude);
            return signed(mantissa.toPlainString()) + " \u00d7 10" + superscript(magnitude);
        }
        return signed(number.scale() < 0 ? number.setScale(0).toPlainString() : number.toPlainString());
    }

    private static String signed(String text) {
        return text.startsWith("-") ? "\u2212" + text.substring(1) : text;
    }

    private static String superscript(int exponent) {
        StringBuilder text = new StringBuilder(exponent < 0 ? "\u207b" : "");
        for (char digit : Integer.toString(Math.abs(exponent)).toCharArray()) {
            text.append("\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079".charAt(digit - '0'));
        }
        return text.toString();
    }

    private static String unit(Quantity quantity) {
        String unit = Units.shown(quantity.unit());
        return unit.isEmpty() ? "" : "\u00a0" + unit;
    }
}
