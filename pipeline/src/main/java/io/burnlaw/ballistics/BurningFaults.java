package io.burnlaw.ballistics;

import io.burnlaw.trace.Trace;
import java.util.Arrays;
import java.util.Optional;

/**
 * Faults of a motor that are easier to draw into a record than to simulate. A core off its axis, an eroding throat, a
 * smoulder, a passing blockage, a burst and a hump at the start are simulated: see {@link Ignition},
 * {@link SimulationSettings.Disturbance}, {@link Nozzle} and {@link io.burnlaw.grain.Bates#withCoreOffset}.
 */
public final class BurningFaults {

    private BurningFaults() {}

    /**
     * Nothing happened: the record stays at the ambient pressure.
     *
     * @param ambient [Pa, absolute]; 0 for thrust
     */
    public static Fault noIgnition(double ambient) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> ambient);
    }

    /**
     * The igniter fires, and the motor comes up only later.
     *
     * @param igniterPeak gauge pressure of the igniter's pulse [Pa]
     * @param from        when the igniter fires [s, on the record's axis]; the record is moved later by the delay
     * @param delay       [s]
     * @param ambient     [Pa, absolute]; 0 for thrust
     */
    public static Fault hangFire(double igniterPeak, double from, double delay, double ambient) {
        return (trace, random) -> {
            double[] signal = trace.hasPressure() ? trace.pressures() : trace.thrusts();
            double interval = (trace.time(trace.size() - 1) - trace.time(0)) / (trace.size() - 1);
            int shift = (int) Math.round(delay / interval);
            return Columns.changeSignal(trace, (i, t, value) -> {
                double late = i < shift ? ambient : signal[i - shift];
                return late + pulse((t - from) / 0.05) * igniterPeak;
            });
        };
    }

    /**
     * Chuffing instead of a burn: separate pulses, not quite even in time and height, and ambient pressure between.
     *
     * @param frequency of the pulses [Hz]
     * @param from      of the first [s, on the record's axis]
     * @param pulses    how many
     * @param height    their mean gauge pressure at the top [Pa]
     * @param ambient   [Pa, absolute]; 0 for thrust
     */
    public static Fault chuffing(double frequency, double from, int pulses, double height, double ambient) {
        return (trace, random) -> {
            double[] start = new double[pulses];
            double[] tall = new double[pulses];
            for (int k = 0; k < pulses; k++) {
                start[k] = from + (k + 0.1 * random.nextGaussian()) / frequency;
                tall[k] = height * Math.max(0.3, 1 + 0.2 * random.nextGaussian());
            }
            double width = 0.35 / frequency;
            return Columns.changeSignal(trace, (i, t, value) -> {
                double sum = ambient;
                for (int k = 0; k < pulses; k++) {
                    sum += tall[k] * pulse((t - start[k]) / width);
                }
                return sum;
            });
        };
    }

    /**
     * Longer than the record: quiet samples put behind its end, for faults that need the time.
     *
     * @param duration [s]
     * @param ambient  [Pa, absolute]; thrust is 0
     */
    public static Fault longer(double duration, double ambient) {
        return (trace, random) -> {
            double interval = (trace.time(trace.size() - 1) - trace.time(0)) / (trace.size() - 1);
            int size = trace.size() + (int) Math.round(duration / interval);
            double[] time = Arrays.copyOf(trace.times(), size);
            for (int i = trace.size(); i < size; i++) {
                time[i] = time[trace.size() - 1] + (i - trace.size() + 1) * interval;
            }
            return Trace.of(
                    trace.firing(),
                    time,
                    trace.hasPressure() ? Optional.of(filled(trace.pressures(), size, ambient)) : Optional.empty(),
                    trace.hasThrust() ? Optional.of(filled(trace.thrusts(), size, 0)) : Optional.empty());
        };
    }

    private static double[] filled(double[] values, int size, double with) {
        double[] longer = Arrays.copyOf(values, size);
        Arrays.fill(longer, values.length, size, with);
        return longer;
    }

    /** Rises in a fifth of the unit time, falls by e each half of it; its top is 1. */
    private static double pulse(double time) {
        if (time <= 0) {
            return 0;
        }
        return time < 0.2 ? time / 0.2 : StrictMath.exp(-(time - 0.2) / 0.5);
    }
}
