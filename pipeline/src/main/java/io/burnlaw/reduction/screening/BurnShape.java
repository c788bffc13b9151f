package io.burnlaw.reduction.screening;

import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.Smoothing;
import io.burnlaw.trace.QuickSelect;
import io.burnlaw.trace.Trace;

/**
 * The outline of a burn: gauge pressure, plain and smoothed, its peak, where it is above a tenth of it, and where the
 * main burn lies. Smoothing is a running mean over a four-hundredth of the time above a tenth of the peak, so that it
 * does not depend on the sampling rate.
 *
 * @param time      [s]
 * @param gauge     [Pa, gauge], unsmoothed
 * @param smooth    [Pa, gauge]
 * @param smoothStd standard deviation of the noise left in it [Pa]
 * @param half      samples on each side in the running mean
 * @param peak      highest smoothed one [Pa, gauge]
 * @param peakAt    its index
 * @param rise      first index above a tenth of the peak
 * @param fall      index after the last one above a tenth of the peak
 * @param level     median of the middle half of the pressure integral: how high the main burn is [Pa, gauge]
 * @param mainRise  last index below three tenths of the level before the middle of the integral, plus one
 * @param mainFall  first index below half of the level after the middle of the integral; the size where there is none
 */
public record BurnShape(
        double[] time,
        double[] gauge,
        double[] smooth,
        double smoothStd,
        int half,
        double peak,
        int peakAt,
        int rise,
        int fall,
        double level,
        int mainRise,
        int mainFall) {

    public static BurnShape of(Burn burn) {
        Trace trace = burn.record().trace();
        int n = trace.size();
        double[] time = trace.times();
        double[] gauge = trace.pressures();
        for (int i = 0; i < n; i++) {
            gauge[i] -= burn.firing().ambientPressure();
        }
        int half = Math.max(1, width(Smoothing.mean(gauge, 1)) / 800);
        double[] smooth = Smoothing.mean(gauge, half);
        double smoothStd = burn.record().noiseStd() / Math.sqrt(2 * half + 1);
        int peakAt = highest(smooth);
        double peak = n == 0 ? 0 : smooth[peakAt];
        int rise = 0;
        while (rise < n && smooth[rise] < 0.1 * peak) {
            rise++;
        }
        int fall = n;
        while (fall > rise && smooth[fall - 1] < 0.1 * peak) {
            fall--;
        }
        double[] share = integralShare(time, gauge, rise, fall);
        int first = first(share, 0.25, rise, fall);
        int middle = first(share, 0.5, rise, fall);
        int last = Math.max(first + 1, first(share, 0.75, rise, fall));
        double level = fall > rise ? median(smooth, first, Math.min(last, n)) : peak;
        int mainRise = Math.min(middle, Math.max(n - 1, 0));
        while (mainRise > 0 && smooth[mainRise - 1] >= 0.3 * level) {
            mainRise--;
        }
        int mainFall = middle;
        while (mainFall < n && smooth[mainFall] >= 0.5 * level) {
            mainFall++;
        }
        return new BurnShape(time, gauge, smooth, smoothStd, half, peak, peakAt, rise, fall, level, mainRise, mainFall);
    }

    public int size() {
        return time.length;
    }

    /** Duration of the main burn [s]. */
    public double mainDuration() {
        return mainFall > mainRise ? time[Math.min(mainFall, size() - 1)] - time[mainRise] : 0;
    }

    /** Usual time between samples [s]. */
    public double interval() {
        return size() < 2 ? 0 : (time[size() - 1] - time[0]) / (size() - 1);
    }

    /** Integral of the absolute pressure between two indices, the second one not in it [Pa s]. */
    public double absoluteIntegral(int from, int to, double ambient) {
        double sum = 0;
        for (int i = from + 1; i < to; i++) {
            sum += (0.5 * (gauge[i] + gauge[i - 1]) + ambient) * (time[i] - time[i - 1]);
        }
        return sum;
    }

    static double median(double[] values, int from, int to) {
        return from >= to ? 0 : QuickSelect.at(values, from, to, (to - from) / 2);
    }

    static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }

    private static double[] integralShare(double[] time, double[] gauge, int from, int to) {
        double[] sum = new double[time.length];
        for (int i = Math.max(1, from); i < time.length; i++) {
            double piece = i < to ? 0.5 * (gauge[i] + gauge[i - 1]) * (time[i] - time[i - 1]) : 0;
            sum[i] = sum[i - 1] + piece;
        }
        double whole = time.length == 0 ? 0 : sum[time.length - 1];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = whole > 0 ? sum[i] / whole : 0;
        }
        return sum;
    }

    private static int first(double[] share, double wanted, int from, int to) {
        int i = from;
        while (i < to - 1 && share[i] < wanted) {
            i++;
        }
        return Math.min(i, Math.max(0, share.length - 1));
    }

    private static int width(double[] smooth) {
        if (smooth.length == 0) {
            return 0;
        }
        double peak = smooth[highest(smooth)];
        int above = 0;
        for (double p : smooth) {
            above += p > 0.1 * peak ? 1 : 0;
        }
        return above;
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
}
