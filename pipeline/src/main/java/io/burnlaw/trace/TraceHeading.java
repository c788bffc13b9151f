package io.burnlaw.trace;

import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Dimension;
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

    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*(?:\\[([^\\[\\]]+)]|\\(([^()]+)\\))\\s*");

    private static final Pattern TAILED = Pattern.compile("(.*\\S)\\s*[\\s_/,:]\\s*([^\\s_,:]+)");

    static TraceHeading of(String text) {
        String written = text.strip().replaceAll("\\s+", " ");
        Matcher bracketed = BRACKETED.matcher(written);
        if (bracketed.matches()) {
            String unit = bracketed.group(2) == null ? bracketed.group(3) : bracketed.group(2);
            return new TraceHeading(written, bracketed.group(1), WrittenUnit.of(unit));
        }
        Matcher tailed = TAILED.matcher(written);
        if (tailed.matches()) {
            Optional<WrittenUnit> unit = WrittenUnit.of(tailed.group(2));
            // "channel 1" has a number, not the unit 1
            if (unit.isPresent() && !tailed.group(2).matches("[0-9]+")) {
                return new TraceHeading(written, tailed.group(1), unit);
            }
        }
        return new TraceHeading(written, written, WrittenUnit.of(written));
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
        return text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
