package io.burnlaw.ballistics;

import java.util.Arrays;
import java.util.TreeSet;

/**
 * Faults of sensors and loggers in a record. Levels are in the unit of the signal: Pa, or N where only thrust was
 * recorded.
 */
public final class RecordFaults {

    private RecordFaults() {}

    /**
     * White noise.
     *
     * @param std its standard deviation [Pa]
     */
    public static Fault noise(double std) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> value + std * random.nextGaussian());
    }

    /**
     * A zero that is off.
     *
     * @param offset [Pa]
     */
    public static Fault zeroOffset(double offset) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> value + offset);
    }

    /**
     * A scale that is off.
     *
     * @param factor by which the gauge reading is multiplied [1]
     * @param ambient where the scale is right [Pa, absolute]; 0 for thrust
     */
    public static Fault gain(double factor, double ambient) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> ambient + factor * (value - ambient));
    }

    /**
     * A zero that wanders evenly from the first sample to the last.
     *
     * @param total change over the record [Pa]
     */
    public static Fault drift(double total) {
        return (trace, random) -> {
            double start = trace.time(0);
            double length = trace.time(trace.size() - 1) - start;
            return Columns.changeSignal(trace, (i, t, value) -> value + total * (t - start) / length);
        };
    }

    /**
     * A sine from the mains, of random phase.
     *
     * @param amplitude [Pa]
     * @param frequency [Hz]
     */
    public static Fault hum(double amplitude, double frequency) {
        return (trace, random) -> {
            double phase = 2 * Math.PI * random.nextDouble();
            return Columns.changeSignal(
                    trace, (i, t, value) -> value + amplitude * StrictMath.sin(2 * Math.PI * frequency * t + phase));
        };
    }

    /**
     * Single samples far off, up or down, at random places.
     *
     * @param count  how many
     * @param height mean of their height [Pa]; each is between half of it and one and a half
     */
    public static Fault spikes(int count, double height) {
        return (trace, random) -> {
            double[] add = new double[trace.size()];
            for (int k = 0; k < count; k++) {
                double sign = random.nextBoolean() ? 1 : -1;
                add[random.nextInt(add.length)] = sign * height * (0.5 + random.nextDouble());
            }
            return Columns.changeSignal(trace, (i, t, value) -> value + add[i]);
        };
    }

    /**
     * A sensor or amplifier at its limit.
     *
     * @param limit the highest reading [Pa, absolute]
     */
    public static Fault clipping(double limit) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> Math.min(value, limit));
    }

    /**
     * A converter of few bits.
     *
     * @param step between two readings [Pa]
     */
    public static Fault quantization(double step) {
        return (trace, random) -> Columns.changeSignal(trace, (i, t, value) -> Math.rint(value / step) * step);
    }

    /**
     * A gap: no samples for a while.
     *
     * @param from     [s, on the record's axis]
     * @param duration [s]
     */
    public static Fault gap(double from, double duration) {
        return (trace, random) -> Columns.keep(trace, i -> trace.time(i) < from || trace.time(i) >= from + duration);
    }

    /**
     * Single samples that were lost.
     *
     * @param share of the samples [1]
     */
    public static Fault lostSamples(double share) {
        return (trace, random) -> {
            boolean[] lost = new boolean[trace.size()];
            for (int i = 1; i < lost.length; i++) {
                lost[i] = random.nextDouble() < share;
            }
            return Columns.keep(trace, i -> !lost[i]);
        };
    }

    /**
     * Time stamps that are not even; the signal belongs to the true time, so the stamps say the truth.
     *
     * @param share of the interval by which a sample may come early or late [1], below 0.5
     */
    public static Fault unevenSampling(double share) {
        return (trace, random) -> {
            double[] time = trace.times();
            double[] moved = time.clone();
            for (int i = 1; i < time.length - 1; i++) {
                moved[i] += share * (2 * random.nextDouble() - 1) * (time[i] - time[i - 1]);
            }
            double[] signal = trace.hasPressure() ? trace.pressures() : trace.thrusts();
            return Columns.changeSignal(
                    Columns.withTimes(trace, moved), (i, t, value) -> interpolate(time, signal, i, t));
        };
    }

    /**
     * A clock that was set back during the record.
     *
     * @param at      when [s, on the record's axis]
     * @param setBack by how much [s]
     */
    public static Fault clockSetBack(double at, double setBack) {
        return (trace, random) -> Columns.changeTime(trace, (i, t, value) -> value < at ? value : value - setBack);
    }

    /**
     * A logger that stopped too early.
     *
     * @param at when [s, on the record's axis]
     */
    public static Fault truncation(double at) {
        return (trace, random) -> Columns.keep(trace, i -> trace.time(i) <= at);
    }

    /**
     * A logger that took only every so many samples. Its clock knows nothing of the igniter's, so that the ignition falls
     * anywhere between two samples.
     *
     * @param every at least 1
     */
    public static Fault coarseSampling(int every) {
        return (trace, random) -> {
            int first = random.nextInt(every);
            return Columns.keep(trace, i -> i % every == first);
        };
    }

    /**
     * The same samples repeated: a logger that wrote its buffer twice.
     *
     * @param count how many samples are repeated, at random places
     */
    public static Fault repeatedSamples(int count) {
        return (trace, random) -> {
            TreeSet<Integer> places = new TreeSet<>();
            while (places.size() < Math.min(count, trace.size() / 2)) {
                places.add(1 + random.nextInt(trace.size() - 1));
            }
            int[] repeated = places.stream().mapToInt(Integer::intValue).toArray();
            double[] before = trace.times();
            double[] time = before.clone();
            for (int place : repeated) {
                time[place] = before[place - 1];
            }
            double[] signal = trace.hasPressure() ? trace.pressures() : trace.thrusts();
            return Columns.changeSignal(Columns.withTimes(trace, time), (i, t, value) -> {
                boolean same = Arrays.binarySearch(repeated, i) >= 0;
                return same ? signal[i - 1] : value;
            });
        };
    }

    private static double interpolate(double[] time, double[] signal, int near, double at) {
        int left = Math.max(0, Math.min(time.length - 2, at < time[near] ? near - 1 : near));
        double share = (at - time[left]) / (time[left + 1] - time[left]);
        return signal[left] + share * (signal[left + 1] - signal[left]);
    }
}
