package io.burnlaw.trace;

import java.util.Arrays;
import java.util.Optional;

/**
 * A zero that comes back after the burn, as that of a warmed sensor does.
 *
 * <pre>
 *     z(t) = c + w exp( -(t - t_s) / tau )          t from t_s on, when the chamber has long been empty
 * </pre>
 *
 * <p>The chamber empties with V/(A_t c* Gamma^2), some milliseconds; what falls for seconds is not burning. So the fit
 * begins several times the duration of the fall after it, and is carried back over it. c and w by least squares for each
 * tau of a grid, tau by the least sum of squares.
 *
 * <p><b>Source.</b> Separable least squares: Golub and Pereyra, SIAM J. Numer. Anal. 10 (1973) 413. Size and duration of
 * the effect (1 to 3 % of the peak, 3 to 20 s): common practice, no source.
 *
 * @param burnout when the reading fell through half of its range [s]
 * @param start   t_s [s]
 * @param level   c, in the unit of the reading
 * @param size    w, in the unit of the reading
 * @param tau     [s]
 * @param std     standard uncertainty of the zero at the burnout, from the fit
 */
record Relaxation(double burnout, double start, double level, double size, double tau, double std) {

    /** The fit begins so many falls from half to a tenth of the range after it [1]: of an emptying chamber e^-6 is left. */
    private static final double FALLS = 4;

    /** Shorter than so many falls the record after it cannot tell a zero from a tail-off [1]. */
    private static final double LEAST_FALLS = 6;

    private static final int MOST_BLOCKS = 200;
    private static final int FEWEST_BLOCKS = 12;

    /** Length of a block over the time since the burnout [1]. */
    private static final double LENGTHENING = 0.04;

    private static final int GRID = 60;

    /** Less than this share of the range moves no rate that matters [1]. */
    private static final double LEAST = 0.001;

    /** How much better than a constant the exponential must be, in residual variances. */
    private static final double CLEAR = 40;

    /** How much less a straight line must leave unexplained to be believed instead [1]. */
    private static final double AS_GOOD = 1.0;

    /**
     * Looks for one.
     *
     * @param time   [s], rising
     * @param quiet  where something burns
     * @return the zero after the burn; empty where it is level, or where the record does not show it
     */
    static Optional<Relaxation> find(double[] time, double[] values, QuietParts quiet) {
        int n = values.length;
        int tenth = quiet.fall();
        if (quiet.rise() >= n || tenth >= n || quiet.before().isEmpty() || quiet.smoulders()) {
            return Optional.empty();
        }
        double base = quiet.before().get().value();
        int half = tenth;
        while (half > quiet.rise() && values[half - 1] < base + 0.5 * quiet.range()) {
            half--;
        }
        double fall = Math.max(time[Math.min(n - 1, tenth)] - time[half], 2 * (time[n - 1] - time[0]) / n);
        double start = time[Math.min(n - 1, tenth)] + FALLS * fall;
        int from = tenth;
        while (from < n && time[from] < start) {
            from++;
        }
        int count = n - from;
        if (count / 4 < FEWEST_BLOCKS || time[n - 1] - start < LEAST_FALLS * fall) {
            return Optional.empty();
        }
        // Blocks that lengthen, and count less, with the time since the burnout: what is carried back rests on the
        // first seconds,
        // and a record that goes on for long, where one exponential no longer holds, does not outvote them.
        double[] t = new double[MOST_BLOCKS];
        double[] z = new double[MOST_BLOCKS];
        int blocks = 0;
        int shortest = Math.max(4, count / 4 / MOST_BLOCKS);
        int first = from;
        while (blocks < MOST_BLOCKS && first + shortest <= n) {
            double length = LENGTHENING * (time[first] - time[half]);
            int after = first + shortest;
            while (after < n && time[after] - time[first] < length) {
                after++;
            }
            t[blocks] = 0.5 * (time[first] + time[after - 1]) - start;
            z[blocks++] = Scatter.median(values, first, after);
            first = after;
        }
        t = Arrays.copyOf(t, blocks);
        z = Arrays.copyOf(z, blocks);
        if (blocks < FEWEST_BLOCKS) {
            return Optional.empty();
        }
        double[] weight = new double[blocks];
        double burned = time[half] - time[quiet.rise()];
        for (int i = 0; i < blocks; i++) {
            weight[i] = 1 / (1 + t[i] * t[i] / (burned * burned));
        }
        return fitted(t, z, weight, start, time[half], fall, quiet.range());
    }

    private static Optional<Relaxation> fitted(
            double[] t, double[] z, double[] weight, double start, double burnout, double fall, double range) {
        double length = t[t.length - 1];
        double constant = line(new double[t.length], z, weight)[2];
        double[] ramp = t.clone();
        double straight = line(ramp, z, weight)[2];
        double least = Double.POSITIVE_INFINITY;
        double[] best = new double[3];
        double tau = 0;
        double shortest = Math.max(fall, length / 50);
        for (int k = 0; k <= GRID; k++) {
            double tried = shortest * StrictMath.pow(20 * length / shortest, k / (double) GRID);
            double[] shape = new double[t.length];
            for (int i = 0; i < t.length; i++) {
                shape[i] = StrictMath.exp(-t[i] / tried);
            }
            double[] found = line(shape, z, weight);
            if (found[2] < least) {
                least = found[2];
                best = found;
                tau = tried;
            }
        }
        int free = Math.max(1, t.length - 3);
        double variance = Math.max(least / free, 1e-12 * range * range);
        boolean clear = constant - least > CLEAR * variance
                && least <= AS_GOOD * straight
                && Math.abs(best[1]) * StrictMath.exp((start - burnout) / tau) > LEAST * range;
        if (!clear) {
            return Optional.empty();
        }
        // What is carried back over the fall is known as well as the first blocks and the curve through them.
        double std = Math.sqrt(variance) + 0.1 * Math.abs(best[1]) * (StrictMath.exp((start - burnout) / tau) - 1);
        return Optional.of(new Relaxation(burnout, start, best[0], best[1], tau, std));
    }

    /** Weighted least squares of z = c + w s: c, w and the sum of squares left; where s does not vary, w is 0. */
    private static double[] line(double[] s, double[] z, double[] weight) {
        double sum = 0;
        double meanS = 0;
        double meanZ = 0;
        for (int i = 0; i < s.length; i++) {
            sum += weight[i];
            meanS += weight[i] * s[i];
            meanZ += weight[i] * z[i];
        }
        meanS /= sum;
        meanZ /= sum;
        double ss = 0;
        double sz = 0;
        double zz = 0;
        for (int i = 0; i < s.length; i++) {
            ss += weight[i] * (s[i] - meanS) * (s[i] - meanS);
            sz += weight[i] * (s[i] - meanS) * (z[i] - meanZ);
            zz += weight[i] * (z[i] - meanZ) * (z[i] - meanZ);
        }
        double w = ss > 1e-12 ? sz / ss : 0;
        return new double[] {meanZ - w * meanS, w, Math.max(0, zz - w * sz)};
    }

    /**
     * The zero at a time after the burnout.
     *
     * @param at [s]
     * @return the reading that means nothing
     */
    double zero(double at) {
        return level + size * StrictMath.exp(-(at - start) / tau);
    }
}
