package io.burnlaw.trace;

import java.util.Arrays;

/**
 * Least squares of one sine on the samples of a residual that are not wild.
 *
 * <p><b>Source.</b> Lomb, Astrophys. Space Sci. 39 (1976) 447, from memory; here by the normal equations.
 */
final class SineFit {

    /** Beside the line, far enough not to see it and near enough to see the same noise [Hz]. */
    private static final double[] NEIGHBOURS = {-9, -6.5, -4, 4, 6.5, 9};

    /** How far mains and logger may be off [Hz]. */
    private static final double WANDER = 0.12;

    /** More samples than this make the fit no better. */
    private static final int MOST_SAMPLES = 20_000;

    private static final double WILD = 3.5;

    private final double[] time;
    private final double[] residual;
    private final double meanSquare;
    private final int samples;
    private final double[] cosine;
    private final double[] sine;

    private SineFit(double[] time, double[] residual, double meanSquare, int samples) {
        this.time = time;
        this.residual = residual;
        this.meanSquare = meanSquare;
        this.samples = samples;
        this.cosine = new double[time.length];
        this.sine = new double[time.length];
    }

    /**
     * A sine of a frequency.
     *
     * @param frequency [Hz]
     * @param cosine    amplitude of the cosine, zero phase at the first sample
     * @param sine      amplitude of the sine
     * @param z         its power over that of the rest; exponential with mean 1 for white noise
     */
    record Line(double frequency, double cosine, double sine, double z) {

        double amplitude() {
            return Math.hypot(cosine, sine);
        }

        double[] takenOff(double[] time, double[] values) {
            int n = time.length;
            double[] turns = new double[n];
            for (int i = 0; i < n; i++) {
                turns[i] = frequency * (time[i] - time[0]);
            }
            double[] c = new double[n];
            double[] s = new double[n];
            Turns.cosineAndSine(turns, c, s);
            double[] clean = values.clone();
            for (int i = 0; i < n; i++) {
                clean[i] -= cosine * c[i] + sine * s[i];
            }
            return clean;
        }
    }

    /** The samples to be fitted: all but {@code half} at each end, without wild ones. */
    static SineFit of(double[] allTimes, double[] all, int half) {
        int n = all.length;
        double wild = WILD * Scatter.stdAboutZero(all, half, n - half);
        int stride = Math.max(1, n / MOST_SAMPLES);
        double[] times = new double[n / stride + 1];
        double[] kept = new double[n / stride + 1];
        int count = 0;
        double sum = 0;
        for (int i = half; i < n - half; i += stride) {
            if (Math.abs(all[i]) <= wild) {
                times[count] = allTimes[i] - allTimes[0];
                kept[count] = all[i];
                sum += all[i] * all[i];
                count++;
            }
        }
        return new SineFit(
                Arrays.copyOf(times, count), Arrays.copyOf(kept, count), count == 0 ? 0 : sum / count, count);
    }

    /** The same on blocks, with the scatter that their samples have. */
    static SineFit of(Blocks blocks, double[] residual, int half) {
        int n = residual.length;
        if (n <= 2 * half) {
            return new SineFit(new double[0], new double[0], 0, 0);
        }
        double wild = WILD * Scatter.stdAboutZero(residual, half, n - half);
        double[] times = new double[n];
        double[] kept = new double[n];
        int count = 0;
        double sum = 0;
        for (int b = half; b < n - half; b++) {
            if (Math.abs(residual[b]) <= wild) {
                times[count] = blocks.time()[b] - blocks.time()[0];
                kept[count] = residual[b];
                sum += residual[b] * residual[b] + blocks.scatter()[b];
                count++;
            }
        }
        return new SineFit(
                Arrays.copyOf(times, count),
                Arrays.copyOf(kept, count),
                count == 0 ? 0 : sum / count,
                count * blocks.together());
    }

    /** The highest line within {@link #WANDER} of a frequency. */
    Line best(double near) {
        return highest(near, 4, this::at);
    }

    /** A fit at a frequency, exact or quick. */
    @FunctionalInterface
    interface At {
        Line at(double frequency);
    }

    /** Looks at a frequency and further off it as long as what is found stands out. */
    Line highest(double near, double standsOut, At fit) {
        double length = time.length < 2 ? 1 : time[time.length - 1] - time[0];
        double step = Math.min(WANDER, 0.25 / length);
        int steps = (int) Math.min(40, Math.ceil(WANDER / step));
        Line best = fit.at(near);
        for (int k = 1; k <= steps && best.z() > standsOut || k <= Math.min(1, steps); k++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                Line other = fit.at(near + sign * k * WANDER / steps);
                best = other.amplitude() > best.amplitude() ? other : best;
            }
        }
        return best;
    }

    /** Median amplitude at frequencies beside one. */
    double beside(double frequency) {
        double[] amplitudes = new double[NEIGHBOURS.length];
        for (int k = 0; k < amplitudes.length; k++) {
            amplitudes[k] = at(frequency + NEIGHBOURS[k]).amplitude();
        }
        return Scatter.median(amplitudes, 0, amplitudes.length);
    }

    /** Times since the first sample of the record [s]. */
    double[] times() {
        return time;
    }

    double[] residuals() {
        return residual;
    }

    /** The line of given amplitudes, with its power over that of the rest. */
    Line line(double frequency, double a, double b) {
        double power = 0.5 * (a * a + b * b);
        double left = Math.max(meanSquare - power, 1e-12 * meanSquare);
        return new Line(frequency, a, b, left > 0 ? power * samples / (2 * left) : 0);
    }

    private Line at(double frequency) {
        int used = time.length;
        double[] turns = new double[used];
        for (int i = 0; i < used; i++) {
            turns[i] = frequency * time[i];
        }
        Turns.cosineAndSine(turns, cosine, sine);
        double cc = 0;
        double ss = 0;
        double cs = 0;
        double xc = 0;
        double xs = 0;
        for (int i = 0; i < used; i++) {
            cc += cosine[i] * cosine[i];
            ss += sine[i] * sine[i];
            cs += cosine[i] * sine[i];
            xc += residual[i] * cosine[i];
            xs += residual[i] * sine[i];
        }
        double determinant = cc * ss - cs * cs;
        if (!(determinant > 1e-9 * used * used)) {
            return new Line(frequency, 0, 0, 0);
        }
        return line(frequency, (xc * ss - xs * cs) / determinant, (xs * cc - xc * cs) / determinant);
    }

    /**
     * A record taken together by several samples at a time: enough for the quick look for mains lines, which are slow
     * beside the sampling of most loggers.
     *
     * @param time     middle of each block [s]
     * @param scatter  mean square of its samples about their mean
     * @param together samples in a block
     */
    record Blocks(double[] time, double[] mean, double[] scatter, int together) {

        static Blocks of(double[] time, double[] values, int together) {
            int blocks = time.length / together;
            double[] middle = new double[blocks];
            double[] mean = new double[blocks];
            double[] scatter = new double[blocks];
            for (int b = 0; b < blocks; b++) {
                int from = b * together;
                double sum = 0;
                double times = 0;
                for (int i = from; i < from + together; i++) {
                    sum += values[i];
                    times += time[i];
                }
                double level = sum / together;
                double squares = 0;
                for (int i = from; i < from + together; i++) {
                    squares += (values[i] - level) * (values[i] - level);
                }
                middle[b] = times / together;
                mean[b] = level;
                scatter[b] = squares / together;
            }
            return new Blocks(middle, mean, scatter, together);
        }
    }

    /**
     * Cosine and sine of many angles at once, to 1e-15 of the circle's radius, the same on every machine. {@link
     * StrictMath} takes ten times as long, and a record asks for a million of them.
     */
    static final class Turns {

        /** Adding and taking it off rounds to the nearest integer, for magnitudes below 2^51. */
        private static final double ROUNDER = 0x1.8p52;

        private Turns() {}

        /**
         * Fills two arrays.
         *
         * @param turns  angles as parts of the full circle, magnitudes below 2^51 [1]
         * @param cosine as long as turns
         * @param sine   as long as turns
         */
        static void cosineAndSine(double[] turns, double[] cosine, double[] sine) {
            for (int i = 0; i < turns.length; i++) {
                double part = turns[i] - ((turns[i] + ROUNDER) - ROUNDER);
                // A quarter of the angle lies within an eighth of the circle, where 8 terms are exact to the last bit.
                double x = 0.5 * Math.PI * part;
                double q = x * x;
                double c = -1.0 / 87_178_291_200.0 + q / 20_922_789_888_000.0;
                c = 1.0 / 479_001_600 + q * c;
                c = -1.0 / 3_628_800 + q * c;
                c = 1.0 / 40_320 + q * c;
                c = -1.0 / 720 + q * c;
                c = 1.0 / 24 + q * c;
                c = -1.0 / 2 + q * c;
                c = 1 + q * c;
                double s = 1.0 / 6_227_020_800.0 - q / 1_307_674_368_000.0;
                s = -1.0 / 39_916_800 + q * s;
                s = 1.0 / 362_880 + q * s;
                s = -1.0 / 5_040 + q * s;
                s = 1.0 / 120 + q * s;
                s = -1.0 / 6 + q * s;
                s = x * (1 + q * s);
                double sTwice = 2 * s * c;
                double cTwice = 1 - 2 * s * s;
                cosine[i] = 1 - 2 * sTwice * sTwice;
                sine[i] = 2 * sTwice * cTwice;
            }
        }
    }
}
