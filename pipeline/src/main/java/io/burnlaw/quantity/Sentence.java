package io.burnlaw.quantity;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A sentence with numbers in it, as people write them. */
public final class Sentence {

    /** A general conversion with a precision, such as {@code %.3g} or {@code %+.2g}; or any other conversion. */
    private static final Pattern CONVERSION = Pattern.compile("%(\\+?)(?:\\.(\\d+)g|([^a-zA-Z%]*[a-zA-Z%]))");

    private Sentence() {}

    /**
     * Formats as {@link String#format(Locale, String, Object...)} does without a locale, but never with an exponent:
     * {@code %.3g} of 4918 is 4920, not 4.92e+03.
     *
     * @param format of the sentence, without indices of arguments; {@code %.0g} is not among its conversions
     * @param values for its conversions, in their order
     * @return the sentence
     */
    public static String of(String format, Object... values) {
        Object[] written = values.clone();
        StringBuilder plain = new StringBuilder();
        Matcher conversion = CONVERSION.matcher(format);
        int next = 0;
        while (conversion.find()) {
            boolean takesNothing = "%".equals(conversion.group(3)) || "n".equals(conversion.group(3));
            if (conversion.group(2) != null) {
                boolean signed = !conversion.group(1).isEmpty();
                written[next] =
                        figure(((Number) values[next]).doubleValue(), Integer.parseInt(conversion.group(2)), signed);
                conversion.appendReplacement(plain, "%s");
            } else {
                conversion.appendReplacement(plain, Matcher.quoteReplacement(conversion.group()));
            }
            next += takesNothing ? 0 : 1;
        }
        return String.format(Locale.ROOT, conversion.appendTail(plain).toString(), written);
    }

    private static String figure(double value, int digits, boolean signed) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "unknown" : (value < 0 ? "-" : "") + "infinite";
        }
        return (signed && value >= 0 ? "+" : "") + Figures.significant(value, digits);
    }
}
