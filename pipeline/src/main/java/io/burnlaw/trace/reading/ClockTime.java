package io.burnlaw.trace.reading;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Time stamps of a clock: {@code 12:03:04.567}, {@code 03:04.5}, {@code 2026-03-01T12:03:04.5Z}, {@code 1:02:03 PM}. */
final class ClockTime {

    private static final double DAY = 86_400;

    private static final Pattern STAMP = Pattern.compile(
            "(?:(\\d{1,4}[-./]\\d{1,2}[-./]\\d{1,4})[T ]+)?(?:(\\d{1,2}):)?(\\d{1,2}):(\\d{1,2}(?:[.,]\\d{1,9})?)"
                    + "\\s*([AaPp][Mm])?\\s*(?:Z|[+-]\\d{2}:?\\d{2})?");

    private double last = Double.NEGATIVE_INFINITY;
    private double days;
    private String date = "";

    static boolean isStamp(String cell) {
        return cell.length() <= 60 && STAMP.matcher(cell).matches();
    }

    /**
     * Seconds since the midnight before the first stamp. A stamp that jumps back by more than half a day, or with a new
     * date, belongs to the next day.
     *
     * @return [s]; empty where the cell is no stamp
     */
    OptionalDouble seconds(String cell) {
        Matcher stamp = cell.length() <= 60 ? STAMP.matcher(cell) : null;
        if (stamp == null || !stamp.matches()) {
            return OptionalDouble.empty();
        }
        double hours = stamp.group(2) == null ? 0 : Double.parseDouble(stamp.group(2));
        double minutes = Double.parseDouble(stamp.group(3));
        double seconds = Double.parseDouble(stamp.group(4).replace(',', '.'));
        if (stamp.group(5) != null) {
            boolean afternoon = stamp.group(5).toLowerCase(Locale.ROOT).equals("pm");
            hours = hours % 12 + (afternoon ? 12 : 0);
        }
        if (minutes >= 60 || seconds >= 61 || hours > 24) {
            return OptionalDouble.empty();
        }
        String day = stamp.group(1) == null ? "" : stamp.group(1);
        double ofDay = 3600 * hours + 60 * minutes + seconds;
        boolean newDate = !day.equals(date) && !date.isEmpty();
        if (ofDay < last && (newDate || last - ofDay > DAY / 2)) {
            days++;
        }
        last = ofDay;
        date = day;
        return OptionalDouble.of(days * DAY + ofDay);
    }
}
