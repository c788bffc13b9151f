package io.burnlaw.reduction;

import io.burnlaw.trace.Trace;
import java.util.Arrays;

/**
 * The outline of a burn: gauge pressure, plain and smoothed, its peak, and where it is above a tenth of it. Smoothing
 * is a running mean over a four-hundredth of the time above a tenth of the peak, so that it does not depend on the
 * sampling rate.
 *
 * @param time       [s]
 * @param gauge      [Pa, gauge], unsmoothed
 * @param smooth     [Pa, gauge]
 * @param smoothStd  standard deviation of the noise left in it [Pa]
 * @param peak       highest smoothed one [Pa, gauge]
 * @param peakAt     its index
 * @param rise       first index above a tenth of the peak
 * @param fall       index after the last one above a tenth of the peak
 * @param half       samples on each side in the running mean
 */
record BurnShape(
        double[] time,
        double[] gauge,
        double[] smooth,
        double smoothStd,
        double peak,
        int peakAt,
        int rise,
        int fall,
        int half) {

    static BurnShape of(Burn burn) {
        Trace trace = burn.record().trace();
        int n = trace.size();
        double[] time = trace.times();
        double[] gauge = trace.pressures();
        for (int i = 0; i < n; i++) {
            gauge[i] -= burn.firing().ambientPressure();
        }
        double[] first = runningMean(gauge, 1);
        int half = Math.max(1, width(first) / 800);
        double[] smooth = runningMean(gauge, half);
        int peakAt = highest(smooth);
        double peak = n == 0 ? 0 : smooth[peakAt];
        int rise = 0;
        while (rise < n && smooth[rise] < 0.1 * peak) {
            rise++;
        }
        int fall = n;
        while (fall > 0 && smooth[fall - 1] < 0.1 * peak) {
            fall--;
        }
        double smoothStd = burn.record().noiseStd() / Math.sqrt(2 * half + 1);
        return new BurnShape(time, gauge, smooth, smoothStd, peak, peakAt, rise, fall, half);
    }

    int size() {
        return time.length;
    }

    /** Duration above a tenth of the peak [s]. */
    double duration() {
        return fall > rise ? time[fall - 1] - time[rise] : 0;
    }

    /** Integral of the gauge pressure between two indices, the second one not in it [Pa s]. */
    double integral(int from, int to) {
        double sum = 0;
        for (int i = Math.max(1, from + 1); i < to; i++) {
            sum += 0.5 * (gauge[i] + gauge[i - 1]) * (time[i] - time[i - 1]);
        }
        return sum;
    }

    private static int width(double[] smooth) {
        if (smooth.length == 0) {
            return 0;
        }
        double peak = smooth[highest(smooth)];
        return (int) Arrays.stream(smooth).filter(p -> p > 0.1 * peak).count();
    }

    private static int highest(double[] values) {
        int at = 0;
        for (int i = 1; i < values.length; i++) {
            if (values[i] > values[at]) {
                at = i;
            }
        }
        return at;
    }

    static double[] runningMean(double[] values, int half) {
        int n = values.length;
        double[] sum = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + values[i];
        }
        double[] mean = new double[n];
        for (int i = 0; i < n; i++) {
            int reach = Math.min(half, Math.min(i, n - 1 - i));
            mean[i] = (sum[i + reach + 1] - sum[i - reach]) / (2 * reach + 1);
        }
        return mean;
    }
}
