package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * Interval of the place of a break: all places at which the least sum of squares is not larger than at the optimum by
 * more than campaigns simulated from the fit show at their true break. The usual quantile of F does not hold here: the
 * sum of squares has corners at the points and, for a jump, steps (Feder 1975; Bai 1997; Hansen 2000).
 */
final class BreakProfile {

    /** Simulations enough for a quantile of 95 %; each costs one search. */
    private static final int MOST_REPLICATES = 400;

    private final Sample sample;
    private final JoinedSearch joined;
    private final JumpingSearch jumping;
    private final double level;

    BreakProfile(Sample sample, JoinedSearch joined, JumpingSearch jumping, double level) {
        this.sample = sample;
        this.joined = joined;
        this.jumping = jumping;
        this.level = level;
    }

    /**
     * The interval of one break.
     *
     * @param y      the values
     * @param fit    whose break it is
     * @param which  the break, from 0
     * @param noise  of the points
     * @param random the stream for this break
     */
    Interval interval(
            double[] y, PiecewiseFit fit, int which, NoiseModel noise, int replicates, RandomGenerator random) {
        double[][] profile = profile(y, fit, which);
        int held = nearest(profile, fit, which);
        int count = Math.min(replicates, MOST_REPLICATES);
        double[] excess = new double[count];
        for (int b = 0; b < count; b++) {
            double[] values = fit.fitted().clone();
            noise.addTo(values, random);
            double[][] simulated = profile(values, fit, which);
            excess[b] = excess(simulated, held);
        }
        Arrays.sort(excess);
        double limit = excess[(int) Math.min(count - 1, Math.ceil(level * count))];
        return hull(profile, fit, which, limit);
    }

    private double[][] profile(double[] y, PiecewiseFit fit, int which) {
        double[] values = y.clone();
        Line line = Line.through(sample.xs(), values, sample.ws(), 0, values.length);
        for (int i = 0; i < values.length; i++) {
            values[i] -= line.at(sample.x(i));
        }
        return fit.shape() == Shape.JOINED
                ? joined.profile(values, fit.count() - 1, which)
                : jumping.profile(values, fit.count(), which);
    }

    private static int nearest(double[][] profile, PiecewiseFit fit, int which) {
        double target = fit.shape() == Shape.JOINED ? fit.breaks()[which] : fit.starts()[which + 1];
        int best = -1;
        for (int e = 0; e < profile[0].length; e++) {
            if (profile[1][e] < Double.POSITIVE_INFINITY
                    && (best < 0 || Math.abs(profile[0][e] - target) < Math.abs(profile[0][best] - target))) {
                best = e;
            }
        }
        return best;
    }

    /** How much larger, relative to the least, the sum of squares is at a place. */
    private static double excess(double[][] profile, int at) {
        double least = Arrays.stream(profile[1]).min().orElse(0);
        return profile[1][at] / Math.max(least, Double.MIN_NORMAL) - 1;
    }

    private Interval hull(double[][] profile, PiecewiseFit fit, int which, double limit) {
        double least = Arrays.stream(profile[1]).min().orElse(0);
        double bound = Math.max(least, Double.MIN_NORMAL) * (1 + limit) * (1 + 1e-12);
        int first = -1;
        int last = -1;
        for (int e = 0; e < profile[0].length; e++) {
            if (profile[1][e] <= bound) {
                first = first < 0 ? e : first;
                last = e;
            }
        }
        double low;
        double high;
        if (fit.shape() == Shape.JOINED) {
            low = crossing(profile, first, first - 1, bound);
            high = crossing(profile, last, last + 1, bound);
            low = Math.min(low, fit.breaks()[which]);
            high = Math.max(high, fit.breaks()[which]);
        } else {
            // a jump is known no better than the gap between the points on its two sides
            low = sample.x((int) profile[0][first] - 1);
            high = sample.x((int) profile[0][last]);
        }
        return new Interval.Estimated(sample.pressure(low), sample.pressure(high), level, Interval.Method.PROFILE);
    }

    private static double crossing(double[][] profile, int inside, int outside, double bound) {
        if (outside < 0 || outside >= profile[0].length || !(profile[1][outside] < Double.POSITIVE_INFINITY)) {
            return profile[0][inside];
        }
        double share = (bound - profile[1][inside]) / (profile[1][outside] - profile[1][inside]);
        return profile[0][inside] + share * (profile[0][outside] - profile[0][inside]);
    }
}
