package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Figures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts the time axis of a record in order: repeated stamps become one sample, gaps and uneven spacing are told, and a
 * clock that runs backward is refused.
 */
public final class TimeStamps {

    /** An interval belongs to a multiple of the usual one if it is this near to it [1]; stamps have few digits. */
    private static final double NEAR = 0.25;

    /** More intervals than this share off the multiples make a record uneven [1]. */
    private static final double UNEVEN_SHARE = 0.05;

    /** So many equal long intervals in a row are a slower rate and no lost samples. */
    private static final int SLOWER_RATE = 10;

    /** Shortest interval that is a gap, in usual ones. */
    private static final double GAP = 1.5;

    /** The usual interval is the median of at most so many. */
    private static final int MEDIAN_OF = 20_001;

    private TimeStamps() {}

    /**
     * What became of a record.
     *
     * @param trace    in order; empty where time runs backward
     * @param findings what was seen
     */
    public record Ordered(Optional<Trace> trace, List<Finding> findings) {
        public Ordered {
            findings = List.copyOf(findings);
        }
    }

    /**
     * Puts a record in order.
     *
     * @param trace as recorded, with times [s] in any order
     * @return with rising times; values of equal stamps are averaged
     */
    public static Ordered order(Trace trace) {
        double[] time = trace.timeArray();
        for (int i = 1; i < time.length; i++) {
            if (time[i] < time[i - 1]) {
                return new Ordered(Optional.empty(), List.of(backward(time[i - 1], time[i], "sample " + (i + 1))));
            }
        }
        List<Finding> findings = new ArrayList<>();
        Trace merged = merged(trace, time, findings);
        findings.addAll(spacing(merged.timeArray()));
        return new Ordered(Optional.of(merged), findings);
    }

    /** The rejection that a backward stamp is. */
    static Finding backward(double before, double stamp, String where) {
        return Finding.at(
                FindingCode.BACKWARD_TIME,
                "%s: the time goes back from %s s to %s s; it must rise.".formatted(where, shown(before), shown(stamp)),
                before);
    }

    private static Trace merged(Trace trace, double[] time, List<Finding> findings) {
        int groups = 0;
        int repeated = 0;
        double first = 0;
        for (int i = 1; i < time.length; i++) {
            if (time[i] == time[i - 1]) {
                groups += i < 2 || time[i - 1] != time[i - 2] ? 1 : 0;
                first = repeated == 0 ? time[i] : first;
                repeated++;
            }
        }
        if (repeated == 0) {
            return trace;
        }
        findings.add(Finding.at(
                FindingCode.REPEATED_TIMESTAMP,
                "%d time stamps stand in more than one sample, first at %s s; the %d further samples were averaged with the first."
                        .formatted(groups, shown(first), repeated),
                first));
        return Trace.owning(
                trace.firing(),
                averaged(time, time),
                trace.hasPressure() ? Optional.of(averaged(time, trace.pressures())) : Optional.empty(),
                trace.hasThrust() ? Optional.of(averaged(time, trace.thrusts())) : Optional.empty());
    }

    private static double[] averaged(double[] time, double[] values) {
        double[] means = new double[values.length];
        int count = 0;
        for (int i = 0; i < time.length; ) {
            double sum = 0;
            int from = i;
            while (i < time.length && time[i] == time[from]) {
                sum += values[i++];
            }
            means[count++] = i - from == 1 || values == time ? values[from] : sum / (i - from);
        }
        return Arrays.copyOf(means, count);
    }

    private static List<Finding> spacing(double[] time) {
        if (time.length < 3) {
            return List.of();
        }
        double usual = usualInterval(time);
        int off = 0;
        int lost = 0;
        int gaps = 0;
        int longestRun = 0;
        double rate = 1 / usual;
        int run = 0;
        double longest = 0;
        double longestAt = 0;
        long before = 1;
        for (int i = 1; i < time.length; i++) {
            double ratio = (time[i] - time[i - 1]) * rate;
            if (Math.abs(ratio - 1) <= NEAR) {
                run = 0;
                before = 1;
                continue;
            }
            long multiple = Math.max(1, Math.round(ratio));
            off += Math.abs(ratio - multiple) > NEAR ? 1 : 0;
            run = multiple > 1 && multiple == before ? run + 1 : 0;
            longestRun = Math.max(longestRun, run);
            before = multiple;
            if (ratio > GAP) {
                gaps++;
                lost += (int) Math.min(Integer.MAX_VALUE / 2, multiple - 1);
                longestAt = ratio > longest ? time[i - 1] : longestAt;
                longest = Math.max(longest, ratio);
            }
        }
        if (off > UNEVEN_SHARE * (time.length - 1) || longestRun >= SLOWER_RATE) {
            return List.of(Finding.of(
                    FindingCode.UNEVEN_SAMPLING,
                    "%s of the intervals differ from the usual %s s, the longest is %s s."
                            .formatted(
                                    Figures.percent(Math.max(off, gaps) / (time.length - 1.0), 2),
                                    Figures.plain(usual, 4),
                                    Figures.plain(longestInterval(time), 4))));
        }
        if (gaps == 0) {
            return List.of();
        }
        Finding finding = Finding.at(
                FindingCode.DROPPED_SAMPLES,
                "%d samples are missing in %d gaps (usual interval %s s); the longest gap is %s s, at %s s."
                        .formatted(
                                lost,
                                gaps,
                                Figures.plain(usual, 4),
                                Figures.plain(longest * usual, 4),
                                shown(longestAt)),
                longestAt);
        return List.of(lost < 3 ? finding.withSeverity(Severity.NOTE) : finding);
    }

    private static double longestInterval(double[] time) {
        double longest = 0;
        for (int i = 1; i < time.length; i++) {
            longest = Math.max(longest, time[i] - time[i - 1]);
        }
        return longest;
    }

    /** The median interval; of a long record that of evenly chosen ones. */
    static double usualInterval(double[] time) {
        int intervals = time.length - 1;
        int count = Math.min(intervals, MEDIAN_OF);
        double[] some = new double[count];
        for (int k = 0; k < count; k++) {
            int i = (int) ((long) k * intervals / count);
            some[k] = time[i + 1] - time[i];
        }
        Arrays.sort(some);
        return some[count / 2];
    }

    /** Samples that carry no reading, told with their number. */
    static Optional<Finding> withoutReading(RawRecord record, String file) {
        if (record.withoutValue() == 0) {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                FindingCode.DROPPED_SAMPLES,
                Severity.CAUTION,
                "%d rows of %s have no reading (empty, NaN or out of range), first on line %d; they were passed over."
                        .formatted(record.withoutValue(), file, record.firstWithout()),
                OptionalDouble.empty()));
    }

    private static String shown(double seconds) {
        return Figures.plain(seconds, 7);
    }
}
