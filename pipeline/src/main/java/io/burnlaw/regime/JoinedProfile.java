package io.burnlaw.regime;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The sum of squares over the place of one break of a joined fit. The other breaks move with it to first order: beside
 * each hinge stands its derivative by its place, a step (Muggeo 2003, section 3). All that is made orthogonal once, so
 * that one place costs one inner product.
 */
final class JoinedProfile {

    /** Places in a gap between neighbouring points. */
    private static final int FINE = 5;

    /** Below this share of its own length a column is a mixture of those before it. */
    private static final double DEPENDENT = 1e-7;

    private final double[] places;
    private final double[] root;
    private final List<double[]> basis = new ArrayList<>();
    private final double[][] hinges;

    JoinedProfile(Sample sample, PiecewiseFit fit, int which, int minimumPoints) {
        double[] x = sample.xs();
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
        hinges = new double[places.length][];
        for (int m = 0; m < places.length; m++) {
            hinges[m] = orthogonal(column(x, places[m], true));
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
        return places.stream().mapToDouble(d -> d).sorted().toArray();
    }

    private static double[] column(double[] x, double from, boolean hinge) {
        double[] column = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            column[i] = x[i] <= from ? 0 : hinge ? x[i] - from : 1;
        }
        return column;
    }

    private void add(double[] column) {
        double[] unit = orthogonal(column);
        if (unit.length > 0) {
            basis.add(unit);
        }
    }

    /** Weighted, orthogonal to the basis and of length 1; empty where nothing is left of it. */
    private double[] orthogonal(double[] column) {
        double[] unit = new double[column.length];
        for (int i = 0; i < unit.length; i++) {
            unit[i] = root[i] * column[i];
        }
        double before = Math.sqrt(dot(unit, unit));
        // twice is enough for full accuracy (Kahan and Parlett)
        for (int pass = 0; pass < 2; pass++) {
            for (double[] other : basis) {
                take(unit, other, dot(unit, other));
            }
        }
        double norm = Math.sqrt(dot(unit, unit));
        if (!(norm > DEPENDENT * before)) {
            return new double[0];
        }
        for (int i = 0; i < unit.length; i++) {
            unit[i] /= norm;
        }
        return unit;
    }

    Profile of(double[] y) {
        double[] left = left(y);
        double all = dot(left, left);
        double[] least = new double[places.length];
        for (int m = 0; m < places.length; m++) {
            double along = hinges[m].length == 0 ? 0 : dot(left, hinges[m]);
            least[m] = Math.max(0, all - along * along);
        }
        return new Profile(places, least);
    }

    /** {@return the values of the best fit that breaks at a place} */
    double[] fitted(double[] y, int place) {
        double[] left = left(y);
        if (hinges[place].length > 0) {
            take(left, hinges[place], dot(left, hinges[place]));
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
