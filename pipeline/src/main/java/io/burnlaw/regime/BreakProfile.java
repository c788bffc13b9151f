package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Regimes.Shape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Interval of the place of a break: all places that a test does not reject. The test of a place is the excess of the
 * sum of squares with the break held there; its critical value is simulated from the fit that has the break there,
 * since the usual quantile of F does not hold: the sum of squares has corners at the points and, for a jump, steps
 * (Feder 1975; Bai 1997; Hansen 2000). It is simulated at the optimum first, and for joined laws again at both ends of
 * the interval that follows: near the end of the points a break shows less, and the critical value is larger.
 */
record BreakProfile(Sample sample, JumpingSearch jumping, RegimeOptions options) {

    /** Simulations enough for a quantile of 95 %; each costs one search. */
    private static final int AT_OPTIMUM = 399;

    private static final int AT_END = 199;
    private static final int MOST_ROUNDS = 4;

    /**
     * The interval of one break.
     *
     * @param fit    whose break it is
     * @param which  the break, from 0
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

    /**
     * The sum of squares over the place of one break of a joined fit. The other breaks move with it to first order:
     * beside each hinge stands its derivative by its place, a step (Muggeo 2003, section 3). What is left of the values
     * is orthogonal to all of these, so that its product with a hinge beside them is that with the bare hinge, which
     * running sums from the far end give: a simulated campaign costs a few operations a point and a place.
     */
    static final class JoinedProfile {

        /** Places in a gap between neighbouring points. */
        private static final int FINE = 5;

        /** Most places; of more an even choice is tried. */
        private static final int MOST_PLACES = 4000;

        /** Below this share of its own length a column is a mixture of those before it. */
        private static final double DEPENDENT = 1e-7;

        private final double[] x;
        private final double[] places;
        private final double[] root;
        private final List<double[]> basis = new ArrayList<>();

        /** Of the hinge at each place, what stands orthogonal to the basis; 0 where nothing does. */
        private final double[] lengths;

        JoinedProfile(Sample sample, PiecewiseFit fit, int which, int minimumPoints) {
            x = sample.xs();
            root = Arrays.stream(sample.ws()).map(Math::sqrt).toArray();
            add(column(x, Double.NEGATIVE_INFINITY, false));
            add(x);
            for (int j = 0; j < fit.count() - 1; j++) {
                if (j != which) {
                    add(column(x, fit.breaks()[j], true));
                    add(column(x, fit.breaks()[j], false));
                }
            }
            places = places(sample, fit, which, minimumPoints);
            lengths = new double[places.length];
            for (int m = 0; m < places.length; m++) {
                double[] hinge = orthogonal(column(x, places[m], true));
                lengths[m] = Math.sqrt(dot(hinge, hinge));
            }
        }

        private static double[] places(Sample sample, PiecewiseFit fit, int which, int minimumPoints) {
            List<Double> places = new ArrayList<>();
            places.add(fit.breaks()[which]);
            for (int i = 0; i + 1 < sample.size(); i++) {
                double step = (sample.x(i + 1) - sample.x(i)) / FINE;
                for (int j = 0; j < FINE && step > 1e-9; j++) {
                    double[] breaks = fit.breaks().clone();
                    breaks[which] = sample.x(i) + j * step;
                    boolean between = (which == 0 || breaks[which] > breaks[which - 1])
                            && (which == breaks.length - 1 || breaks[which] < breaks[which + 1]);
                    if (between && JoinedSearch.carries(sample, breaks, minimumPoints)) {
                        places.add(breaks[which]);
                    }
                }
            }
            int most = Math.min(places.size(), MOST_PLACES);
            double optimum = places.remove(0);
            // the optimum itself is always among them
            return DoubleStream.concat(
                            DoubleStream.of(optimum),
                            IntStream.range(0, most - 1)
                                    .mapToDouble(i -> places.get((int) ((i + 0.5) * places.size() / (most - 1)))))
                    .sorted()
                    .toArray();
        }

        private static double[] column(double[] x, double from, boolean hinge) {
            double[] column = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                column[i] = x[i] <= from ? 0 : hinge ? x[i] - from : 1;
            }
            return column;
        }

        private void add(double[] column) {
            double[] across = orthogonal(column);
            double length = Math.sqrt(dot(across, across));
            if (across.length > 0) {
                basis.add(Arrays.stream(across).map(each -> each / length).toArray());
            }
        }

        /** Weighted, and orthogonal to the basis; empty where nothing is left of it. */
        private double[] orthogonal(double[] column) {
            double[] across = new double[column.length];
            for (int i = 0; i < across.length; i++) {
                across[i] = root[i] * column[i];
            }
            double before = Math.sqrt(dot(across, across));
            // twice is enough for full accuracy (Kahan and Parlett)
            for (int pass = 0; pass < 2; pass++) {
                for (double[] other : basis) {
                    take(across, other, dot(across, other));
                }
            }
            double norm = Math.sqrt(dot(across, across));
            if (!(norm > DEPENDENT * before)) {
                return new double[0];
            }
            return across;
        }

        Profile of(double[] y) {
            double[] left = left(y);
            double all = dot(left, left);
            double[] least = new double[places.length];
            double sum = 0;
            double sumX = 0;
            int i = left.length - 1;
            for (int m = places.length - 1; m >= 0; m--) {
                for (; i >= 0 && x[i] > places[m]; i--) {
                    sum += root[i] * left[i];
                    sumX += root[i] * left[i] * x[i];
                }
                double along = lengths[m] > 0 ? (sumX - places[m] * sum) / lengths[m] : 0;
                least[m] = Math.max(0, all - along * along);
            }
            return new Profile(places, least);
        }

        /** {@return the values of the best fit that breaks at a place} */
        double[] fitted(double[] y, int place) {
            double[] left = left(y);
            if (lengths[place] > 0) {
                double[] hinge = orthogonal(column(x, places[place], true));
                take(left, hinge, dot(left, hinge) / (lengths[place] * lengths[place]));
            }
            double[] fitted = y.clone();
            for (int i = 0; i < fitted.length; i++) {
                fitted[i] -= left[i] / root[i];
            }
            return fitted;
        }

        private double[] left(double[] y) {
            double[] left = new double[y.length];
            for (int i = 0; i < left.length; i++) {
                left[i] = root[i] * y[i];
            }
            for (double[] other : basis) {
                take(left, other, dot(left, other));
            }
            return left;
        }

        private static double dot(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < a.length; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }

        private static void take(double[] from, double[] unit, double times) {
            for (int i = 0; i < from.length; i++) {
                from[i] -= times * unit[i];
            }
        }
    }
}
