package io.burnlaw.reduction.events;

import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.trace.Trace;
import java.util.Arrays;
import java.util.Optional;

/**
 * Reduces a record to as many samples as a picture can show: the lowest and the highest sample of each of some hundred
 * stretches.
 */
public final class HistoryThinning {

    private static final int STRETCHES = 300;

    private HistoryThinning() {}

    /** {@return the operation and a little around it, at most 600 samples, in the order of time} */
    public static Optional<TraceHistory> of(Trace trace, Operation seen) {
        double span = seen.to() - seen.from();
        return between(trace, seen.from() - 0.15 * span, seen.to() + 0.25 * span);
    }

    /** {@return a whole record, at most 600 samples in the order of time; empty where there is none} */
    public static Optional<TraceHistory> whole(Trace trace) {
        return between(trace, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static Optional<TraceHistory> between(Trace trace, double from, double to) {
        if (trace.size() == 0) {
            return Optional.empty();
        }
        int first = 0;
        while (first < trace.size() - 1 && trace.time(first) < from) {
            first++;
        }
        int last = trace.size() - 1;
        while (last > first && trace.time(last) > to) {
            last--;
        }
        int count = last - first + 1;
        int stretches = Math.min(STRETCHES, count);
        int[] shown = new int[2 * stretches];
        int size = 0;
        for (int s = 0; s < stretches; s++) {
            int begin = first + (int) ((long) count * s / stretches);
            int end = first + (int) ((long) count * (s + 1) / stretches);
            int low = begin;
            int high = begin;
            for (int i = begin; i < end; i++) {
                low = trace.pressure(i) < trace.pressure(low) ? i : low;
                high = trace.pressure(i) > trace.pressure(high) ? i : high;
            }
            shown[size++] = Math.min(low, high);
            if (low != high) {
                shown[size++] = Math.max(low, high);
            }
        }
        int[] samples = Arrays.copyOf(shown, size);
        return Optional.of(TraceHistory.of(new TraceHistory.Samples(
                Arrays.stream(samples).mapToDouble(trace::time).toArray(),
                Arrays.stream(samples).mapToDouble(trace::pressure).toArray(),
                trace.hasThrust()
                        ? Optional.of(Arrays.stream(samples)
                                .mapToDouble(trace::thrust)
                                .toArray())
                        : Optional.empty())));
    }
}
