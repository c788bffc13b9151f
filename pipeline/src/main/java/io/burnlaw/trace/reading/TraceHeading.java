package io.burnlaw.trace.reading;

import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Dimension;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The heading of a logger's column, with the unit that it names: {@code time [ms]}, {@code Pressure (psi)},
 * {@code t_ms}, {@code p/MPa}, {@code thrust, N}.
 *
 * @param written as it stands there
 * @param name    without the unit
 * @param unit    where one is named
 */
record TraceHeading(String written, String name, Optional<WrittenUnit> unit) {

    private static final Pattern BLANKS = Pattern.compile("\\s+");

    /** The unit has a slash itself, as in {@code p, lb/in2}. */
    private static final Pattern TAILED_WITH_SLASH = Pattern.compile("(.*[^\\s_,:])[\\s_,:]+([^\\s_,:]+/[^\\s_,:]+)");

    private static final Pattern TAILED = Pattern.compile("(.*[^\\s_/,:])[\\s_/,:]+([^\\s_,:]+)");

    static TraceHeading of(String text) {
        String written = BLANKS.matcher(text.strip()).replaceAll(" ");
        int bracket = bracket(written);
        if (bracket >= 0) {
            return new TraceHeading(
                    written,
                    written.substring(0, bracket).stripTrailing(),
                    WrittenUnit.of(written.substring(bracket + 1, written.length() - 1)));
        }
        for (Pattern tail : List.of(TAILED_WITH_SLASH, TAILED)) {
            Matcher tailed = tail.matcher(written);
            // "channel 1" has a number, not the unit 1
            if (tailed.matches() && !tailed.group(2).matches("[0-9]+")) {
                Optional<WrittenUnit> unit = WrittenUnit.of(tailed.group(2));
                if (unit.isPresent()) {
                    return new TraceHeading(written, tailed.group(1), unit);
                }
            }
        }
        return new TraceHeading(written, written, WrittenUnit.of(written));
    }

    /** Where the brackets open that close at the end with something in them; -1 where there are none. */
    private static int bracket(String written) {
        char close = written.isEmpty() ? ' ' : written.charAt(written.length() - 1);
        if (close != ']' && close != ')') {
            return -1;
        }
        char opening = close == ']' ? '[' : '(';
        int depth = 0;
        for (int i = written.length() - 1; i >= 0; i--) {
            depth += written.charAt(i) == close ? 1 : written.charAt(i) == opening ? -1 : 0;
            if (depth == 0) {
                return i < written.length() - 2 ? i : -1;
            }
        }
        return -1;
    }

    TraceHeading withUnit(String other) {
        Optional<WrittenUnit> read = WrittenUnit.of(other.strip().replaceAll("^[\\[(]|[\\])]$", ""));
        return read.isEmpty() ? this : new TraceHeading(written + " [" + other.strip() + "]", name, read);
    }

    boolean hasDimension(Dimension dimension) {
        return unit.filter(u -> u.unit().dimension() == dimension).isPresent();
    }

    boolean isCalled(String other) {
        return fold(written).equals(fold(other)) || fold(name).equals(fold(other));
    }

    static String fold(String text) {
        return BLANKS.matcher(text.strip()).replaceAll(" ").toLowerCase(Locale.ROOT);
    }
}
