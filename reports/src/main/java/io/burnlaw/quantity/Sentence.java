package io.burnlaw.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** A sentence with numbers in it, as people write them. */
public final class Sentence {

    private Sentence() {}

    /**
     * Formats as {@link String#format(Locale, String, Object...)} does without a locale, but never with an exponent:
     * {@code %.3g} of 4918 is 4920, not 4.92e+03; and with a minus sign (U+2212) before negative numbers.
     *
     * @param format of the sentence, without indices of arguments; {@code %.0g} is not among its conversions
     * @param values for its conversions, in their order
     */
    public static String of(String format, Object... values) {
        StringBuilder sentence = new StringBuilder(format.length() + 16 * values.length);
        int next = 0;
        int at = 0;
        while (at < format.length()) {
            int sign = format.indexOf('%', at);
            if (sign < 0) {
                break;
            }
            sentence.append(format, at, sign);
            int letter = sign + 1;
            while (!Character.isLetter(format.charAt(letter)) && format.charAt(letter) != '%') {
                letter++;
            }
            at = letter + 1;
            String conversion = format.substring(sign, at);
            switch (conversion) {
                case "%%" -> sentence.append('%');
                case "%n" -> sentence.append(System.lineSeparator());
                case "%s" -> sentence.append(values[next++]);
                default -> sentence.append(written(conversion, values[next++]));
            }
        }
        return sentence.append(format, at, format.length()).toString();
    }

    /** The usual conversions by hand: a formatter reads its format anew for each firing. */
    private static String written(String conversion, Object value) {
        boolean signed = conversion.charAt(1) == '+';
        int point = signed ? 2 : 1;
        boolean precise = conversion.length() == point + 3
                && conversion.charAt(point) == '.'
                && Character.isDigit(conversion.charAt(point + 1));
        char letter = conversion.charAt(conversion.length() - 1);
        if (letter == 'g' && precise) {
            return figure(((Number) value).doubleValue(), conversion.charAt(point + 1) - '0', signed);
        }
        if (letter == 'f' && precise && value instanceof Double number && Double.isFinite(number)) {
            return fixed(number, conversion.charAt(point + 1) - '0', signed);
        }
        return NumberFormat.signed(String.format(Locale.ROOT, conversion, value));
    }

    private static String figure(double value, int digits, boolean signed) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "unknown" : (value < 0 ? "\u2212" : "") + "infinite";
        }
        return (signed && value >= 0 ? "+" : "") + NumberFormat.significant(value, digits);
    }

    private static String fixed(double value, int decimals, boolean signed) {
        String magnitude = BigDecimal.valueOf(Math.abs(value))
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
        boolean negative = value < 0 || 1 / value < 0;
        return (negative ? "\u2212" : signed ? "+" : "") + magnitude;
    }
}
