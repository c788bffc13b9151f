package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.Arrays;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;

/**
 * Interval of the place of a break: all places that a test does not reject. The test of a place is the excess of the
 * sum of squares with the break held there; its critical value is simulated from the fit that has the break there,
 * since the usual quantile of F does not hold: the sum of squares has corners at the points and, for a jump, steps
 * (Feder 1975; Bai 1997; Hansen 2000). It is simulated at the optimum first, and for joined laws again at both ends of
 * the interval that follows: near the end of the points a break shows less, and the critical value is larger.
 */
final class BreakProfile {

    /** Simulations enough for a quantile of 95 %; each costs one search. */
    private static final int AT_OPTIMUM = 399;

    private static final int AT_END = 199;
    private static final int MOST_ROUNDS = 4;

    private final Sample sample;
    private final JumpingSearch jumping;
    private final RegimeOptions options;

    BreakProfile(Sample sample, JumpingSearch jumping, RegimeOptions options) {
        this.sample = sample;
        this.jumping = jumping;
        this.options = options;
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
    Interval interval(double[] y, PiecewiseFit fit, int which, NoiseModel noise, RandomGenerator random) {
        double[] ends =
                fit.shape() == Shape.JOINED ? joined(y, fit, which, noise, random) : gaps(y, fit, which, noise, random);
        return new Interval.Estimated(
                sample.pressure(ends[0]), sample.pressure(ends[1]), options.level(), Interval.Method.PROFILE);
    }

    private double[] joined(double[] y, PiecewiseFit fit, int which, NoiseModel noise, RandomGenerator random) {
        JoinedProfile profiles = new JoinedProfile(sample, fit, which, options.minimumPoints());
        Profile found = profiles.of(y);
        int held = found.nearest(fit.breaks()[which]);
        double limit = limit(profiles::of, fit.fitted(), held, noise, AT_OPTIMUM, random);
        double[] ends = new double[2];
        for (int side = 0; side < 2; side++) {
            boolean upward = side == 1;
            double largest = limit;
            int at = found.outermost(largest, upward);
            for (int round = 0; round < MOST_ROUNDS; round++) {
                largest = Math.max(largest, limit(profiles::of, profiles.fitted(y, at), at, noise, AT_END, random));
                int further = found.outermost(largest, upward);
                if (further == at) {
                    break;
                }
                at = further;
            }
            ends[side] = found.crossing(at, upward ? at + 1 : at - 1, largest);
        }
        return new double[] {Math.min(ends[0], fit.breaks()[which]), Math.max(ends[1], fit.breaks()[which])};
    }

    /** A jump is known no better than the gap between the points on its two sides. */
    private double[] gaps(double[] y, PiecewiseFit fit, int which, NoiseModel noise, RandomGenerator random) {
        UnaryOperator<double[]> level = values -> {
            double[] off = values.clone();
            Line line = Line.through(sample.xs(), off, sample.ws(), 0, off.length);
            for (int i = 0; i < off.length; i++) {
                off[i] -= line.at(sample.x(i));
            }
            return off;
        };
        Function<double[], Profile> profiles = values -> jumping.profile(level.apply(values), fit.count(), which);
        Profile found = profiles.apply(y);
        int held = found.nearest(fit.starts()[which + 1]);
        double limit = limit(profiles, fit.fitted(), held, noise, AT_OPTIMUM, random);
        int first = (int) found.places()[found.outermost(limit, false)];
        int last = (int) found.places()[found.outermost(limit, true)];
        return new double[] {sample.x(first - 1), sample.x(last)};
    }

    /** Quantile of the excess at the place held, over campaigns simulated from laws that break there. */
    private double limit(
            Function<double[], Profile> profiles,
            double[] truth,
            int held,
            NoiseModel noise,
            int replicates,
            RandomGenerator random) {
        double[] excess = new double[Math.min(options.replicates(), replicates)];
        for (int b = 0; b < excess.length; b++) {
            double[] values = truth.clone();
            noise.addTo(values, random);
            excess[b] = profiles.apply(values).excess(held);
        }
        Arrays.sort(excess);
        return excess[(int) Math.ceil(options.level() * (excess.length + 1)) - 1];
    }
}
