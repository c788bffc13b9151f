package io.burnlaw.trace;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** What can stand in a cell of a record. */
final class CellText {

    /** What loggers and spreadsheets write where there is no reading. */
    private static final Set<String> MISSING = Set.of(
            "",
            "nan",
            "+nan",
            "-nan",
            "inf",
            "+inf",
            "-inf",
            "infinity",
            "+infinity",
            "-infinity",
            "na",
            "n/a",
            "#n/a",
            "null",
            "none",
            "-",
            "--",
            "---",
            "?",
            "ovld",
            "over",
            "overflow",
            "overrange",
            "#value!",
            "#div/0!",
            "#num!",
            "#ref!",
            "∞",
            "-∞");

    private static final Pattern POINT = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern COMMA = Pattern.compile("[+-]?(\\d+,?\\d*|,\\d+)([eE][+-]?\\d+)?");
    private static final Pattern DATE = Pattern.compile("\\d{1,4}[-./]\\d{1,2}[-./]\\d{1,4}");

    private CellText() {}

    static boolean isMissing(String cell) {
        return cell.length() <= 12 && MISSING.contains(cell.strip().toLowerCase(Locale.ROOT));
    }

    static boolean isNumber(String cell, boolean decimalComma) {
        return (decimalComma ? COMMA : POINT).matcher(cell).matches();
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
