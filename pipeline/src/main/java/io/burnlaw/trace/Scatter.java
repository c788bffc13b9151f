package io.burnlaw.trace;

import java.util.Arrays;

/** Medians and what is made of them: location and scatter that single wild samples cannot move. */
final class Scatter {

    /** Of a normal distribution: standard deviation over median absolute deviation, 1/Φ⁻¹(3/4) [1]. */
    static final double STD_OVER_MAD = 1.482602218505602;

    private Scatter() {}

    /** Median of {@code values[from..to)}. */
    static double median(double[] values, int from, int to) {
        return QuickSelect.median(values, from, to);
    }

    /** Arithmetic mean of {@code values[from..to)}. */
    static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }

    /** Standard deviation about the median by the median absolute deviation, of {@code values[from..to)}. */
    static double std(double[] values, int from, int to) {
        return std(values, from, to, median(values, from, to));
    }

    /** The same where the median is known. */
    static double std(double[] values, int from, int to, double centre) {
        double[] off = new double[to - from];
        for (int i = from; i < to; i++) {
            off[i - from] = Math.abs(values[i] - centre);
        }
        return STD_OVER_MAD * median(off, 0, off.length);
    }

    /** The same about 0, for values that are known to lie about it, as what is left of a fit does. */
    static double stdAboutZero(double[] values, int from, int to) {
        double[] off = new double[to - from];
        for (int i = from; i < to; i++) {
            off[i - from] = Math.abs(values[i]);
        }
        return STD_OVER_MAD * median(off, 0, off.length);
    }

    /**
     * Standard deviation of white noise on a slowly changing signal: from each sample's distance to the mean of its two
     * neighbours, whose variance is 3/2 of the noise's.
     */
    static double fastStd(double[] values, int from, int to) {
        if (to - from < 5) {
            return 0;
        }
        double[] bend = new double[to - from - 2];
        for (int i = 0; i < bend.length; i++) {
            bend[i] = values[from + i + 1] - 0.5 * (values[from + i] + values[from + i + 2]);
        }
        return stdOfMoving(bend) / Math.sqrt(1.5);
    }

    /**
     * Standard deviation about 0 by the median absolute value; where more than half of the values are exactly 0, as where a
     * record stands still at its limit, of the others.
     */
    static double stdOfMoving(double[] values) {
        double all = stdAboutZero(values, 0, values.length);
        if (all > 0) {
            return all;
        }
        double[] moving = Arrays.stream(values).filter(value -> value != 0).toArray();
        return moving.length < values.length / 50 + 4 ? 0 : stdAboutZero(moving, 0, moving.length);
    }

    /** Running mean over {@code 2·half + 1} samples, over fewer at the ends; zero phase. */
    static double[] runningMean(double[] values, int half) {
        int n = values.length;
        double[] sum = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + values[i];
        }
        double[] mean = new double[n];
        int inner = Math.min(half, (n + 1) / 2);
        for (int i = 0; i < inner; i++) {
            // Shrunk on both sides alike, so that a slope is not turned into an offset at the ends.
            mean[i] = sum[2 * i + 1] / (2 * i + 1);
            mean[n - 1 - i] = (sum[n] - sum[n - 1 - 2 * i]) / (2 * i + 1);
        }
        // Apart from the ends, so that the compiler can work on several samples at a time.
        double width = 2 * half + 1;
        for (int i = half; i < n - half; i++) {
            mean[i] = (sum[i + half + 1] - sum[i - half]) / width;
        }
        return mean;
    }
}
