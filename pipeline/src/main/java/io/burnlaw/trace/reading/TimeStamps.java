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
        return NumberFormat.plain(seconds, 7);
    }
}
