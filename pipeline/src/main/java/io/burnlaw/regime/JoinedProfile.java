package io.burnlaw.regime;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The sum of squares over the place of one break of a joined fit. The other breaks move with it to first order: beside
 * each hinge stands its derivative by its place, a step (Muggeo 2003, section 3). What is left of the values is orthogonal
 * to all of these, so that its product with a hinge beside them is that with the bare hinge, which running sums from the
 * far end give: a simulated campaign costs a few operations a point and a place.
 */
final class JoinedProfile {

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
