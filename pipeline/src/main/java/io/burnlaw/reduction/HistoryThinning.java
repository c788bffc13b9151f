package io.burnlaw.reduction;

import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Thins a record to what a picture can show: the lowest and the highest sample of each of some hundred stretches. */
final class HistoryThinning {

    private static final int STRETCHES = 300;

    private HistoryThinning() {}

    /**
     * Thins a record.
     *
     * @param trace with pressure, thrust or both
     * @param from  begin of what is of interest [s]
     * @param to    end of it [s]
     * @return at most 600 samples, in the order of time; empty where the trace has no pressure
     */
    static Optional<TraceHistory> of(Trace trace, double from, double to) {
        if (!trace.hasPressure()) {
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
        List<Double> time = new ArrayList<>();
        List<Double> pressure = new ArrayList<>();
        List<Double> thrust = new ArrayList<>();
        int stretches = Math.min(STRETCHES, count);
        for (int s = 0; s < stretches; s++) {
            int begin = first + (int) ((long) count * s / stretches);
            int end = first + (int) ((long) count * (s + 1) / stretches);
            int low = begin;
            int high = begin;
            for (int i = begin; i < end; i++) {
                low = trace.pressure(i) < trace.pressure(low) ? i : low;
                high = trace.pressure(i) > trace.pressure(high) ? i : high;
            }
            add(trace, Math.min(low, high), time, pressure, thrust);
            if (low != high) {
                add(trace, Math.max(low, high), time, pressure, thrust);
            }
        }
        return Optional.of(
                new TraceHistory(time, pressure, trace.hasThrust() ? Optional.of(thrust) : Optional.empty()));
    }

    private static void add(Trace trace, int i, List<Double> time, List<Double> pressure, List<Double> thrust) {
        time.add(trace.time(i));
        pressure.add(trace.pressure(i));
        if (trace.hasThrust()) {
            thrust.add(trace.thrust(i));
        }
    }
}
