package io.burnlaw.quantity;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Reads numbers as people write them: decimal point or decimal comma, no thousands separators, always finite. */
public final class DecimalNumber {

    private static final Pattern PLAIN =
            Pattern.compile("[+\\-\u2212]?(\\d{1,300}([.,]\\d{0,300})?|[.,]\\d{1,300})([eE][+\\-\u2212]?\\d{1,4})?");

    private static final Pattern TWO_WAYS = Pattern.compile("[+\\-\u2212]?[1-9]\\d{0,2},\\d{3}");

    /** So many digits always make a finite number. */
    private static final int MOST_PLAIN = 30;

    private DecimalNumber() {}

    /**
     * Reads a number.
     *
     * @param text such as {@code 12.7}, {@code 12,7} or {@code 1.2e-3}; a minus sign of typesetting is read too
     * @return the number; empty where the text is not a number, or none that a double can hold
     */
    public static OptionalDouble read(String text) {
        String stripped = text.strip();
        if (isPlain(stripped)) {
            return OptionalDouble.of(JavaDoubleParser.parseDouble(stripped));
        }
        if (!PLAIN.matcher(stripped).matches()) {
            return OptionalDouble.empty();
        }
        double value = JavaDoubleParser.parseDouble(stripped.replace(',', '.').replace('\u2212', '-'));
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** Whether a text is nothing but digits with a decimal point among them or before: what nearly all cells hold. */
    static boolean isPlain(String text) {
        int points = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            points += c == '.' ? 1 : 0;
            if ((c < '0' || c > '9') && c != '.') {
                return false;
            }
        }
        return text.length() > points && text.length() <= MOST_PLAIN && points <= 1;
    }

    /**
     * Whether a comma could be a decimal comma as well as a thousands separator, as in {@code 1,250}.
     *
     * @return whether it can be read in two ways
     */
    public static boolean readsTwoWays(String text) {
        return TWO_WAYS.matcher(text.strip()).matches();
    }
}
