package io.burnlaw.regime;

import io.burnlaw.regime.Evidence.Rival;
import java.util.ArrayList;
import java.util.List;

/**
 * A family of curves without a break, y = level + offset(parameter) + Σ direction(parameter): least squares over a grid
 * of its one nonlinear parameter, the rest in closed form, so that it can be fitted anew to every simulated campaign.
 */
final class RivalCurves {

    private static final int GRID = 80;

    /** One curve of the family: a fixed part, and orthogonal directions that are free. */
    private record Curve(double parameter, double[] offset, double[][] directions) {}

    /**
     * A curve as fitted.
     *
     * @param fitted    value at each point
     * @param rss       weighted sum of squares
     * @param free      coefficients, the nonlinear one included
     * @param curvature mean of dn/d(ln P) over the range [1]
     */
    record Fit(double parameter, double[] fitted, double rss, int free, double curvature) {}

    private final Sample sample;
    private final Rival.Kind kind;
    private final double[] w;
    private final List<Curve> grid = new ArrayList<>();
    private final int free;

    RivalCurves(Sample sample, Rival.Kind kind) {
        this.sample = sample;
        this.kind = kind;
        this.w = sample.ws();
        this.free = kind == Rival.Kind.TWO_TERM ? 2 : 3;
        int steps = kind == Rival.Kind.QUADRATIC ? 1 : GRID;
        for (int g = 0; g < steps; g++) {
            grid.add(curve(parameterAt(steps == 1 ? 0 : (double) g / (steps - 1))));
        }
    }

    private double lowest() {
        return sample.pressure(sample.x(0));
    }

    /** Grid of the parameter by a share from 0 to 1. */
    private double parameterAt(double share) {
        return switch (kind) {
            case QUADRATIC -> 0;
            // from where the second term rules everywhere to where the first does: A/B = P^(2/3) at equality
            case TWO_TERM -> {
                double low = 2.0 / 3 * StrictMath.log(lowest()) - 5;
                double high = 2.0 / 3 * StrictMath.log(sample.pressure(sample.x(sample.size() - 1))) + 5;
                yield low + share * (high - low);
            }
            // true pressure at the lowest point from a twentieth of its reading to four times that
            case ZERO_OFFSET -> lowest() * (1 - StrictMath.exp(-3 + share * 4.4));
        };
    }

    private Curve curve(double parameter) {
        int n = sample.size();
        double[] offset = new double[n];
        List<double[]> columns = new ArrayList<>();
        double[] column = new double[n];
        switch (kind) {
            case QUADRATIC -> {
                columns.add(sample.xs());
                for (int i = 0; i < n; i++) {
                    column[i] = sample.x(i) * sample.x(i);
                }
                columns.add(column);
            }
            case TWO_TERM -> {
                for (int i = 0; i < n; i++) {
                    double p = sample.pressure(sample.x(i));
                    offset[i] = -StrictMath.log(StrictMath.exp(parameter) / p + 1 / StrictMath.cbrt(p));
                }
            }
            case ZERO_OFFSET -> {
                for (int i = 0; i < n; i++) {
                    column[i] = StrictMath.log(sample.pressure(sample.x(i)) - parameter);
                }
                columns.add(column);
            }
        }
        List<double[]> basis = new ArrayList<>();
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1 / Math.sqrt(inner(ones(n), ones(n))));
        basis.add(ones);
        for (double[] each : columns) {
            double[] direction = each.clone();
            double size = Math.sqrt(inner(each, each));
            for (double[] other : basis) {
                double along = inner(direction, other);
                for (int i = 0; i < n; i++) {
                    direction[i] -= along * other[i];
                }
            }
            double norm = Math.sqrt(inner(direction, direction));
            if (norm > 1e-9 * size) {
                for (int i = 0; i < n; i++) {
                    direction[i] /= norm;
                }
                basis.add(direction);
            }
        }
        return new Curve(parameter, offset, basis.toArray(double[][]::new));
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }

    private double inner(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += w[i] * a[i] * b[i];
        }
        return sum;
    }

    /** {@return the least sum of squares on the grid} */
    double rss(double[] y) {
        double least = Double.POSITIVE_INFINITY;
        for (Curve curve : grid) {
            least = Math.min(least, rss(y, curve));
        }
        return least;
    }

    private double rss(double[] y, Curve curve) {
        double sum = 0;
        double[] along = new double[curve.directions.length];
        for (int i = 0; i < y.length; i++) {
            double v = y[i] - curve.offset[i];
            sum += w[i] * v * v;
            for (int d = 0; d < along.length; d++) {
                along[d] += w[i] * v * curve.directions[d][i];
            }
        }
        for (double a : along) {
            sum -= a * a;
        }
        return Math.max(0, sum);
    }

    /** {@return the best curve, its parameter refined by golden section about the best of the grid} */
    Fit fit(double[] y) {
        int best = 0;
        for (int g = 1; g < grid.size(); g++) {
            best = rss(y, grid.get(g)) < rss(y, grid.get(best)) ? g : best;
        }
        Curve curve = grid.get(best);
        if (grid.size() > 1) {
            double low = grid.get(Math.max(0, best - 1)).parameter;
            double high = grid.get(Math.min(grid.size() - 1, best + 1)).parameter;
            curve = golden(y, low, high);
        }
        double[] fitted = curve.offset.clone();
        for (double[] direction : curve.directions) {
            double along = 0;
            for (int i = 0; i < y.length; i++) {
                along += w[i] * (y[i] - curve.offset[i]) * direction[i];
            }
            for (int i = 0; i < y.length; i++) {
                fitted[i] += along * direction[i];
            }
        }
        double rss = 0;
        for (int i = 0; i < y.length; i++) {
            rss += w[i] * (y[i] - fitted[i]) * (y[i] - fitted[i]);
        }
        return new Fit(curve.parameter, fitted, rss, free, curvature(fitted));
    }

    private Curve golden(double[] y, double from, double to) {
        double ratio = (Math.sqrt(5) - 1) / 2;
        double low = from;
        double high = to;
        Curve a = curve(high - ratio * (high - low));
        Curve b = curve(low + ratio * (high - low));
        for (int i = 0; i < 60; i++) {
            if (rss(y, a) <= rss(y, b)) {
                high = b.parameter;
                b = a;
                a = curve(high - ratio * (high - low));
            } else {
                low = a.parameter;
                a = b;
                b = curve(low + ratio * (high - low));
            }
        }
        return rss(y, a) <= rss(y, b) ? a : b;
    }

    /** dn/d(ln P) of the curve over the range: the change of slope from the lower to the upper end, over the range. */
    private double curvature(double[] fitted) {
        double[] slopes = endSlopes(fitted);
        int n = fitted.length;
        return (slopes[1] - slopes[0]) / Math.max(1e-9, sample.x(n - 1) - sample.x(0));
    }

    /** {@return the local exponent of a smooth curve at the lowest and at the highest point, by its end steps} */
    double[] endSlopes(double[] fitted) {
        int[] steps = sample.steps();
        int first = steps[0];
        int last = steps[steps.length - 1];
        return new double[] {
            (fitted[first] - fitted[0]) / (sample.x(first) - sample.x(0)),
            (fitted[last] - fitted[last - 1]) / (sample.x(last) - sample.x(last - 1))
        };
    }
}
