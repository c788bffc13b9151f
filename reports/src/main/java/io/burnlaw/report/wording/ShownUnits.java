package io.burnlaw.report.wording;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Units in which numbers are shown. Sentences, tables and pictures are written in MPa, mm and mm/s; this class converts
 * their numbers into other units, each with the digits that it had: a last place stands for at most as much as before,
 * and at least three digits are kept, four of a whole number, which may be exact. A page does the same in its script,
 * by these patterns and factors.
 */
public enum ShownUnits {
    /** Megapascal, millimetre. */
    MPA(Unit.MEGAPASCAL, "MPa", Unit.MILLIMETRE, "mm", Unit.MILLIMETRE_PER_SECOND, "mm/s"),
    /** Bar, millimetre. */
    BAR(Unit.BAR, "bar", Unit.MILLIMETRE, "mm", Unit.MILLIMETRE_PER_SECOND, "mm/s"),
    /** Pounds per square inch, inch. */
    PSI(Unit.POUND_PER_SQUARE_INCH, "psi", Unit.INCH, "in", Unit.INCH_PER_SECOND, "in/s");

    private static final String NUMBER = "[\u2212-]?\\d+(?:\\.\\d+)?";
    private static final String INTERVAL = " \\((?:[\\d.]+[ \u00a0]%: )?N to N\\)";

    /** What stands before, numbers that share a unit, the blank, the unit, and an interval behind it. */
    static final String RUN = ("(^|[^\\w.\u2212-])(N(?:(?: \u00b1 | to | and | or |, | \u00d7 )N)*(?:" + INTERVAL
                    + ")?)([ \u00a0])(MPa|kPa|mm/s|mm)(?![\\w\u00b2\u00b3/\u00b7])((?:" + INTERVAL + ")?)")
            .replace("N", NUMBER);

    /** A law: coefficient, what stands between, exponent. */
    static final String LAW = "([\\d.]+)([ \u00a0]?\u00b7[ \u00a0]?P\\^)(-?[\\d.]*\\d)";

    /** A unit without a number. */
    static final String NAME = "((?:in|[,(\\[])[ \u00a0]?)(MPa|mm/s|mm)(?![\\w\u00b2\u00b3/\u00b7])";

    private static final Pattern RUNS = Pattern.compile(RUN);
    private static final Pattern LAWS = Pattern.compile(LAW);
    private static final Pattern NAMES = Pattern.compile(NAME);
    private static final Pattern NUMBERS =
            Pattern.compile("(" + NUMBER + ")(?: \u00b1 (\\d+(?:\\.\\d+)?))?(?!\\.?\\d|[ \u00a0]%)");

    private final Map<String, Object> factors = new LinkedHashMap<>();

    ShownUnits(Unit pressure, String pressureName, Unit length, String lengthName, Unit rate, String rateName) {
        factors.put("pressure", pressure.fromSi(Unit.MEGAPASCAL.toSi(1)));
        factors.put("pressure_name", pressureName);
        factors.put("length", length.fromSi(Unit.MILLIMETRE.toSi(1)));
        factors.put("length_name", lengthName);
        factors.put("rate", rate.fromSi(Unit.MILLIMETRE_PER_SECOND.toSi(1)));
        factors.put("rate_name", rateName);
    }

    /** {@return the word of an option or an attribute} */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** {@return names and factors of all units by their key, and the patterns, for the script of a page} */
    public static Map<String, Object> all() {
        Map<String, Object> all = new LinkedHashMap<>();
        for (ShownUnits each : values()) {
            all.put(each.key(), each.factors);
        }
        all.put("run", RUN);
        all.put("law", LAW);
        all.put("name", NAME);
        all.put("number", NUMBERS.pattern());
        return all;
    }

    /**
     * A sentence.
     *
     * @param text with numbers in MPa, mm and mm/s
     * @return the same in these units
     */
    public String text(String text) {
        if (this == MPA) {
            return text;
        }
        String laws = LAWS.matcher(text).replaceAll(found -> Matcher.quoteReplacement(law(found)));
        String runs = RUNS.matcher(laws)
                .replaceAll(found -> Matcher.quoteReplacement(found.group(1)
                        + numbers(found.group(2), factor(found.group(4)))
                        + found.group(3)
                        + name(found.group(4))
                        + numbers(found.group(5), factor(found.group(4)))));
        return NAMES.matcher(runs).replaceAll(found -> Matcher.quoteReplacement(found.group(1) + name(found.group(2))));
    }

    /**
     * A cell of a table.
     *
     * @param heading of its column, with the unit
     * @param cell    numbers in that unit
     * @return the same in these units
     */
    public String cell(String heading, String cell) {
        Matcher unit = NAMES.matcher(heading);
        if (this == MPA || !unit.find() || RUNS.matcher(cell).find()) {
            return text(cell);
        }
        // powers of ten stay in the unit that they are in, and say so
        return cell.contains("\u00d7 10") ? cell + " " + unit.group(2) : numbers(cell, factor(unit.group(2)));
    }

    private String law(MatchResult found) {
        double exponent = Double.parseDouble(found.group(3));
        double coefficient =
                Double.parseDouble(found.group(1)) * value("rate") * StrictMath.pow(value("pressure"), -exponent);
        return NumberFormat.significant(coefficient, 4) + found.group(2) + found.group(3);
    }

    private double value(String kind) {
        return (Double) factors.get(kind);
    }

    private double factor(String unit) {
        return switch (unit) {
            case "MPa" -> value("pressure");
            case "kPa" -> value("pressure") / 1000;
            case "mm" -> value("length");
            default -> value("rate");
        };
    }

    private String name(String unit) {
        return (String)
                factors.get((unit.endsWith("Pa") ? "pressure" : unit.equals("mm") ? "length" : "rate") + "_name");
    }

    private static String numbers(String text, double factor) {
        return factor == 1
                ? text
                : NUMBERS.matcher(text).replaceAll(found -> number(found.group(1), found.group(2), factor));
    }

    /** With its uncertainty to two digits, where it has one. */
    private static String number(String text, @Nullable String std, double factor) {
        boolean whole = text.indexOf('.') < 0;
        String sign = text.replaceFirst("[\\d.]+$", "");
        double value = Double.parseDouble(text.substring(sign.length())) * factor;
        int decimals = text.length() - 1 - (whole ? text.length() - 1 : text.indexOf('.')) - magnitude(factor);
        if (std != null && Double.parseDouble(std) > 0) {
            int digits = std.replaceFirst("^[0.]+", "").replace(".", "").length();
            decimals = Math.min(1, digits - 1) - magnitude(Double.parseDouble(std) * factor);
        } else if (value != 0) {
            decimals = Math.max(decimals, (whole ? 3 : 2) - magnitude(value));
        }
        return sign
                + written(value, decimals, whole && std == null)
                + (std == null ? "" : " \u00b1 " + written(Double.parseDouble(std) * factor, decimals, false));
    }

    private static int magnitude(double value) {
        return (int) Math.floor(Math.log10(value) + 1e-9);
    }

    private static String written(double value, int decimals, boolean whole) {
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (whole ? rounded.stripTrailingZeros() : rounded).toPlainString();
    }
}
