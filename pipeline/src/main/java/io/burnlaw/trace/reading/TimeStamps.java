package io.burnlaw.trace.reading;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts the time axis of a record in order: repeated stamps become one sample, and a clock that runs backward is refused.
 */
public final class TimeStamps {

    private TimeStamps() {}

    /**
     * The ordered record.
     *
     * @param trace in order; empty where time runs backward
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
                "%d time stamps occur in more than one sample, first at %s s; the %d further samples were averaged with the first."
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

    /** Samples that carry no reading, told with their number. */
    static Optional<Finding> withoutReading(RawRecord record, String file) {
        if (record.withoutValue() == 0) {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                FindingCode.DROPPED_SAMPLES,
                Severity.CAUTION,
                "%d rows of %s have no reading (empty, NaN or out of range), first on line %d; they were ignored."
                        .formatted(record.withoutValue(), file, record.firstWithout()),
                OptionalDouble.empty()));
    }

    private static String shown(double seconds) {
        return NumberFormat.plain(seconds, 7);
    }

    /**
     * A counter of microseconds or milliseconds that began again at zero because its bits were full: 2^16, 2^24, 2^31
     * or 2^32. It is continued only where the step over the wrap is as long as the others.
     */
    static final class CounterWrap {

        private static final double[] FULL = {0x1p16, 0x1p24, 0x1p31, 0x1p32};

        /** The file may show counts as thousandths or millionths: a millisecond counter as seconds. */
        private static final double[] SHOWN_AS = {1, 1e-3, 1e-6};

        /** A step over the wrap is at most so many usual steps: a sample or two may be missing there. */
        private static final double LONGEST_STEP = 3;

        /** A counter that is full after fewer steps than these would have been noticed. */
        private static final double FEWEST_STEPS = 200;

        private static final int LOOKED_AT = 1000;

        private CounterWrap() {}

        /**
         * Continues the times in place.
         *
         * @param time as in the file [its unit]
         * @return a remark; empty where nothing was changed
         */
        static Optional<String> continued(double[] time) {
            double usual = usualStep(time);
            double[] offset = new double[time.length];
            int wraps = 0;
            int first = 0;
            for (int i = 1; i < time.length; i++) {
                offset[i] = offset[i - 1];
                if (time[i] < time[i - 1]) {
                    double period = period(time[i - 1], time[i], usual);
                    if (!(period > 0)) {
                        return Optional.empty();
                    }
                    offset[i] += period;
                    first = wraps++ == 0 ? i + 1 : first;
                }
            }
            if (wraps == 0) {
                return Optional.empty();
            }
            Arrays.setAll(time, i -> time[i] + offset[i]);
            return Optional.of("the time counter started again at zero %s, first at sample %d; the time was continued."
                    .formatted(wraps == 1 ? "once" : wraps + " times", first));
        }

        private static double period(double before, double after, double usual) {
            for (double full : FULL) {
                for (double shown : SHOWN_AS) {
                    double step = after + full * shown - before;
                    if (after >= 0
                            && before < full * shown
                            && step > 0
                            && step <= LONGEST_STEP * usual
                            && usual * FEWEST_STEPS < full * shown) {
                        return full * shown;
                    }
                }
            }
            return Double.NaN;
        }

        private static double usualStep(double[] time) {
            double[] steps = new double[Math.min(LOOKED_AT, time.length) - 1];
            Arrays.setAll(steps, i -> Math.abs(time[i + 1] - time[i]));
            Arrays.sort(steps);
            return steps[steps.length / 2];
        }
    }
}
