package io.burnlaw.trace.reading;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** What can stand in a cell of a record. */
final class CellText {

    /** What loggers and spreadsheets write where there is no reading. */
    private static final Set<String> MISSING =
            Set.of(("|nan|+nan|-nan|inf|+inf|-inf|infinity|+infinity|-infinity|na|n/a|#n/a|null|none|-|--|---|?|"
                            + "ovld|over|overflow|overrange|#value!|#div/0!|#num!|#ref!|∞|-∞|ovl|ol|o.l|o.l.|overload|err|"
                            + "error|open|invalid|bad|fault|missing")
                    .split("\\|"));

    /** Marks in the width of the column. */
    private static final Pattern MARKS = Pattern.compile("[*?#.–—-]+");

    /** Thousands apart, as in {@code 1,234.5}: both signs in one number leave no doubt which is which. */
    private static final Pattern GROUPED_POINT = Pattern.compile("[-+]?\\d{1,3}(,\\d{3})+\\.\\d+");

    private static final Pattern GROUPED_COMMA = Pattern.compile("[-+]?\\d{1,3}(\\.\\d{3})+,\\d+");

    private static final Pattern DATE = Pattern.compile("\\d{1,4}[-./]\\d{1,2}[-./]\\d{1,4}");

    private CellText() {}

    static boolean isMissing(String cell) {
        return cell.length() <= 12
                && (MISSING.contains(cell.strip().toLowerCase(Locale.ROOT))
                        || MARKS.matcher(cell.strip()).matches());
    }

    /** Digits with at most one decimal sign, and an exponent of ten where there is one. */
    static boolean isNumber(String cell, boolean decimalComma) {
        int end = cell.length();
        int mantissa = signed(cell, 0);
        int whole = digits(cell, mantissa);
        int i = whole;
        boolean any = whole > mantissa;
        if (i < end && cell.charAt(i) == (decimalComma ? ',' : '.')) {
            int fraction = digits(cell, i + 1);
            any |= fraction > i + 1;
            i = fraction;
        }
        if (any && i < end && (cell.charAt(i) == 'e' || cell.charAt(i) == 'E')) {
            int exponent = signed(cell, i + 1);
            i = digits(cell, exponent);
            any = i > exponent;
        }
        return any && i == end;
    }

    private static int signed(String cell, int at) {
        return at < cell.length() && (cell.charAt(at) == '+' || cell.charAt(at) == '-') ? at + 1 : at;
    }

    private static int digits(String cell, int from) {
        int i = from;
        while (i < cell.length() && cell.charAt(i) >= '0' && cell.charAt(i) <= '9') {
            i++;
        }
        return i;
    }

    /** Whether a row of readings may hold the cell. */
    static boolean isReading(String cell, boolean decimalComma) {
        return isNumber(cell, decimalComma)
                || isMissing(cell)
                || ungrouped(cell, decimalComma).isPresent()
                || ClockTime.isStamp(cell)
                || isDate(cell);
    }

    /** A number with its thousands set apart, with a decimal point and nothing else. */
    static Optional<String> ungrouped(String cell, boolean decimalComma) {
        boolean grouped = cell.length() <= 40
                && (decimalComma ? GROUPED_COMMA : GROUPED_POINT).matcher(cell).matches();
        return grouped
                ? Optional.of(decimalComma ? cell.replace(".", "").replace(',', '.') : cell.replace(",", ""))
                : Optional.empty();
    }

    static boolean isDate(String cell) {
        return DATE.matcher(cell).matches();
    }

    static String unquoted(String cell) {
        String stripped = cell.strip();
        boolean quoted = stripped.length() >= 2 && stripped.startsWith("\"") && stripped.endsWith("\"");
        return quoted ? stripped.substring(1, stripped.length() - 1).strip() : stripped;
    }
}
