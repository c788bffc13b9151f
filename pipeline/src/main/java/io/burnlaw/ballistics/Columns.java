package io.burnlaw.ballistics;

import io.burnlaw.trace.Trace;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** Ways to make one record of another. */
final class Columns {

    /** What happens to the value of one sample. */
    interface SampleChange {
        double of(int index, double time, double value);
    }

    private Columns() {}

    /** Changes the pressures, or the thrusts where there is no pressure. */
    static Trace changeSignal(Trace trace, SampleChange change) {
        double[] signal = trace.hasPressure() ? trace.pressures() : trace.thrusts();
        for (int i = 0; i < signal.length; i++) {
            signal[i] = change.of(i, trace.time(i), signal[i]);
        }
        return trace.hasPressure()
                ? trace.withPressure(signal)
                : Trace.of(trace.firing(), trace.times(), Optional.empty(), Optional.of(signal));
    }

    /** Changes the time stamps. */
    static Trace changeTime(Trace trace, SampleChange change) {
        double[] times = trace.times();
        double[] changed = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            changed[i] = change.of(i, times[i], times[i]);
        }
        return withTimes(trace, changed);
    }

    static Trace withTimes(Trace trace, double[] times) {
        return Trace.of(
                trace.firing(),
                times,
                trace.hasPressure() ? Optional.of(trace.pressures()) : Optional.empty(),
                trace.hasThrust() ? Optional.of(trace.thrusts()) : Optional.empty());
    }

    /** Keeps some of the samples. */
    static Trace keep(Trace trace, IntPredicate kept) {
        int[] indices = IntStream.range(0, trace.size()).filter(kept).toArray();
        return Trace.of(
                trace.firing(),
                pick(indices, trace::time),
                trace.hasPressure() ? Optional.of(pick(indices, trace::pressure)) : Optional.empty(),
                trace.hasThrust() ? Optional.of(pick(indices, trace::thrust)) : Optional.empty());
    }

    private static double[] pick(int[] indices, IntToDoubleFunction column) {
        return Arrays.stream(indices).mapToDouble(column).toArray();
    }
}
