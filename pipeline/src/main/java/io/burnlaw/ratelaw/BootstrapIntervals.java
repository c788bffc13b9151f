package io.burnlaw.ratelaw;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Bias-corrected and accelerated intervals from refits to firings drawn with replacement.
 *
 * <pre>
 *     z0 = Φ⁻¹( share of the replicates below the estimate )
 *     α  = sum (m - t_k)³ / ( 6 · [ sum (m - t_k)² ]^(3/2) )     t_k without firing k, m their mean
 *     ends at the quantiles  Φ( z0 + (z0 ± z) / (1 - α·(z0 ± z)) )  of the replicates
 * </pre>
 *
 * <p><b>Source.</b> Efron (1987); Efron and Tibshirani (1993), eq. 14.9 to 14.15.
 */
final class BootstrapIntervals {

    /** Below this many firings the draws have too few different outcomes to have quantiles far out. */
    static final int FEWEST_FIRINGS = 5;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final double[] estimate;
    private final double[][] replicates;
    private final double[][] without;
    private final double level;

    BootstrapIntervals(Resampling resampling, double[] estimate, int count, long seed, double level) {
        this.estimate = estimate;
        this.level = level;
        replicates = resampling.clusters() < FEWEST_FIRINGS ? new double[0][] : resampling.replicates(count, seed);
        without = resampling.jackknife();
    }

    /** Of p0 + at·p1, the logarithm of the rate at a pressure. */
    Interval lnRate(double at) {
        return of(1, at);
    }

    /** Of the exponent. */
    Interval exponent() {
        return of(0, 1);
    }

    private Interval of(double first, double second) {
        if (replicates.length == 0) {
            return new Interval.NotEstimable("fewer than " + FEWEST_FIRINGS
                    + " independent firings have too few different draws for a bootstrap; one more would do");
        }
        return corrected(
                values(replicates, first, second),
                values(without, first, second),
                first * estimate[0] + second * estimate[1],
                level);
    }

    /** The interval of a value, from what it is in each replicate and without each firing. */
    static Interval corrected(double[] replicates, double[] without, double estimate, double level) {
        double[] sorted = replicates.clone();
        Arrays.sort(sorted);
        int below = 0;
        int equal = 0;
        for (double value : sorted) {
            below += value < estimate ? 1 : 0;
            equal += value == estimate ? 1 : 0;
        }
        double share = (below + 0.5 * equal) / sorted.length;
        if (!(share > 0 && share < 1)) {
            return new Interval.NotEstimable(
                    "all replicates lie on one side of the estimate; more firings would mend that");
        }
        double bias = NORMAL.inverseCumulativeProbability(share);
        double acceleration = acceleration(without);
        double tail = NORMAL.inverseCumulativeProbability(0.5 + level / 2);
        double low = quantile(sorted, share(bias, acceleration, -tail));
        double high = quantile(sorted, share(bias, acceleration, tail));
        return new Interval.Estimated(Math.min(low, high), Math.max(low, high), level, Interval.Method.BOOTSTRAP_BCA);
    }

    private static double[] values(double[][] parameters, double first, double second) {
        double[] values = new double[parameters.length];
        for (int r = 0; r < values.length; r++) {
            values[r] = first * parameters[r][0] + second * parameters[r][1];
        }
        return values;
    }

    private static double acceleration(double[] left) {
        double mean = Arrays.stream(left).average().orElseThrow();
        double square = 0;
        double cube = 0;
        for (double value : left) {
            double d = mean - value;
            square += d * d;
            cube += d * d * d;
        }
        return square > 0 ? cube / (6 * (square * Math.sqrt(square))) : 0;
    }

    private static double share(double bias, double acceleration, double z) {
        double shifted = bias + z;
        return NORMAL.cumulativeProbability(bias + shifted / (1 - acceleration * shifted));
    }

    /** By linear interpolation between the order statistics, at (count + 1)·p. */
    private static double quantile(double[] sorted, double p) {
        double place = Math.min(Math.max((sorted.length + 1) * p - 1, 0), sorted.length - 1.0);
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }
}
