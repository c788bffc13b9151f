package io.burnlaw.report.wording;

import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Rounds, once and only here: an uncertainty to two significant digits, its value to the same place (JCGM 100:2008,
 * 7.2.6). A number whose uncertainty is not known is shown with three digits if it was computed and with four if
 * somebody stated it, and never with more than it has.
 */
public final class Numbers {

    private static final int COMPUTED = 3;
    private static final int STATED = 4;

    private Numbers() {}

    /**
     * Value with unit, and plus-minus its standard uncertainty or its interval where known.
     *
     * @param quantity or null
     * @return such as {@code 6.94 ± 0.11 mm/s}, or {@code 6.94 mm/s (95 %: 6.71 to 7.18)}, or a dash for null
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
     * Value with its standard uncertainty and unit, whether or not it has an interval.
     *
     * @param quantity or null
     * @return such as {@code 6.94 ± 0.11 mm/s}
     */
    public static String withStd(@Nullable Quantity quantity) {
        if (quantity == null) {
            return "\u2013";
        }
        Double std = quantity.std();
        String spread = std != null && std > 0 ? " \u00b1 " + plain(atPlace(std, place(std))) : "";
        return value(quantity) + spread + unit(quantity);
    }

    /**
     * Value with its standard uncertainty, for a column whose heading has the unit.
     *
     * @param quantity or null
     * @return such as {@code 6.94 ± 0.11}
     */
    public static String bare(@Nullable Quantity quantity) {
        return quantity == null
                ? "\u2013"
                : withStd(new Quantity(
                        quantity.value(), null, quantity.low(), quantity.high(), quantity.level(), quantity.std()));
    }

    /**
     * The value alone, with the digits that its uncertainty leaves.
     *
     * @param quantity or null
     * @return such as {@code 6.94}
     */
    public static String value(@Nullable Quantity quantity) {
        return quantity == null ? "\u2013" : digits(quantity.value(), place(quantity), COMPUTED);
    }

    /**
     * A quantity that somebody stated, with its unit.
     *
     * @param quantity or null
     * @return such as {@code 12.35 mm}
     */
    public static String stated(@Nullable Quantity quantity) {
        if (quantity == null) {
            return "\u2013";
        }
        return quantity.std() != null ? withStd(quantity) : digits(quantity.value(), null, STATED) + unit(quantity);
    }

    /**
     * The interval alone, with its level, to the place of the value.
     *
     * @param quantity or null
     * @return such as {@code 95 %: 6.71 to 7.18}, or a dash where there is none
     */
    public static String interval(@Nullable Quantity quantity) {
        if (quantity == null || !hasInterval(quantity)) {
            return "\u2013";
        }
        String level = quantity.level() == null ? "" : percent(quantity.level(), 3) + ": ";
        return level + range(quantity);
    }

    /**
     * The ends of the interval alone.
     *
     * @param quantity or null
     * @return such as {@code 6.71 to 7.18}, or a dash where there is none
     */
    public static String range(@Nullable Quantity quantity) {
        if (quantity == null || quantity.low() == null || quantity.high() == null) {
            return "\u2013";
        }
        Integer place = place(quantity);
        return digits(quantity.low(), place, COMPUTED) + " to " + digits(quantity.high(), place, COMPUTED);
    }

    /**
     * A bare number.
     *
     * @param value or null
     * @param significant most digits shown
     * @return such as {@code 0.0123} or {@code 1.23 × 10⁻⁷}
     */
    public static String number(@Nullable Double value, int significant) {
        return value == null ? "\u2013" : digits(value, null, significant);
    }

    /**
     * A share as per cent.
     *
     * @param share [1], or null
     * @param significant most digits shown
     * @return such as {@code 1.3 %}
     */
    public static String percent(@Nullable Double share, int significant) {
        return share == null
                ? "\u2013"
                : plain(new BigDecimal(share * 100).round(new MathContext(significant, RoundingMode.HALF_EVEN)))
                        + "\u00a0%";
    }

    /**
     * The probability of a test.
     *
     * @param p [1], or null
     * @return such as {@code 0.032}, and below one in ten thousand only that
     */
    public static String probability(@Nullable Double p) {
        if (p == null) {
            return "\u2013";
        }
        return p < 1e-4 ? "< 0.0001" : number(p, 2);
    }

    /**
     * The ends of an interval, to the place that its width allows.
     *
     * @param low lower end
     * @param high upper end
     * @return such as {@code 0.310 to 0.350}
     */
    public static String ends(double low, double high) {
        return range(new Quantity((low + high) / 2, null, low, high, null, null));
    }

    /**
     * A value within its interval.
     *
     * @param value any
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
        if (std != null && std > 0) {
            return place(std);
        }
        if (quantity.low() != null && quantity.high() != null && quantity.high() > quantity.low()) {
            // an interval of 95 % is about four standard uncertainties wide
            return place((quantity.high() - quantity.low()) / 4);
        }
        return null;
    }

    private static int place(double uncertainty) {
        BigDecimal two = new BigDecimal(uncertainty).round(new MathContext(2, RoundingMode.HALF_EVEN));
        return two.scale();
    }

    private static BigDecimal atPlace(double value, int place) {
        return new BigDecimal(value).setScale(place, RoundingMode.HALF_EVEN);
    }

    private static String digits(double value, @Nullable Integer place, int significant) {
        if (place != null) {
            return plain(atPlace(value, place));
        }
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(significant, RoundingMode.HALF_EVEN));
        return plain(rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros());
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
