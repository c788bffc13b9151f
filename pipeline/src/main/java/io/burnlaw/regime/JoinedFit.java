package io.burnlaw.regime;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * Exact least squares for pieces that meet, from a start on the grid. Between two neighbouring points the sum of squares
 * as a function of one break is that of two free lines wherever these cross in that gap, and takes its least value at an
 * end of the gap otherwise (Hudson 1966); so each break in turn is put at its exact optimum, the others held, until none
 * moves.
 */
final class JoinedFit {

    private static final int MOST_SWEEPS = 200;

    /** Points on either side of a break among which it is moved in one sweep. */
    private static final int REACH = 15;

    private final Sample sample;
    private final double[] x;
    private final double[] y;
    private final double[] w;
    private final int minimumPoints;

    private JoinedFit(Sample sample, double[] y, int minimumPoints) {
        this.sample = sample;
        this.x = sample.xs();
        this.y = y;
        this.w = sample.ws();
        this.minimumPoints = minimumPoints;
    }

    static PiecewiseFit of(Sample sample, double[] y, double[] start, int minimumPoints) {
        return new JoinedFit(sample, y, minimumPoints).fit(start.clone());
    }

    private PiecewiseFit fit(double[] breaks) {
        double rss = solve(breaks).rss;
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            double moved = 0;
            for (int j = 0; j < breaks.length; j++) {
                double before = breaks[j];
                rss = improve(breaks, j, rss);
                moved = Math.max(moved, Math.abs(breaks[j] - before));
            }
            if (breaks.length < 2 || moved < 1e-11) {
                break;
            }
        }
        return describe(breaks, solve(breaks));
    }

    private double improve(double[] breaks, int j, double rss) {
        double best = rss;
        double at = breaks[j];
        int here = 0;
        while (here < x.length && x[here] < breaks[j]) {
            here++;
        }
        for (int i = Math.max(1, here - REACH); i < Math.min(x.length, here + REACH); i++) {
            if (x[i] - x[i - 1] < 1e-9) {
                continue;
            }
            for (double candidate : new double[] {crossing(breaks, j, i), x[i - 1], x[i]}) {
                if (candidate >= x[i - 1] && candidate <= x[i] && allowed(breaks, j, candidate)) {
                    double[] tried = breaks.clone();
                    tried[j] = candidate;
                    double sum = solve(tried).rss;
                    if (sum < best) {
                        best = sum;
                        at = candidate;
                    }
                }
            }
        }
        breaks[j] = at;
        return best;
    }

    private boolean allowed(double[] breaks, int j, double candidate) {
        double[] tried = breaks.clone();
        tried[j] = candidate;
        for (int i = 1; i < tried.length; i++) {
            if (!(tried[i] > tried[i - 1])) {
                return false;
            }
        }
        return JoinedSearch.carries(sample, tried, minimumPoints);
    }

    /** Where two free lines that part between points i - 1 and i cross, the other breaks held; NaN where they don't. */
    private double crossing(double[] breaks, int j, int i) {
        double[][] columns = new double[breaks.length + 3][];
        int c = 0;
        columns[c++] = column(Double.NEGATIVE_INFINITY, false);
        columns[c++] = x.clone();
        for (int other = 0; other < breaks.length; other++) {
            if (other != j) {
                columns[c++] = column(breaks[other], true);
            }
        }
        double middle = (x[i - 1] + x[i]) / 2;
        columns[c++] = column(middle, true);
        columns[c] = column(middle, false);
        double[] beta = leastSquares(columns);
        return beta.length == 0 ? Double.NaN : middle - beta[c] / beta[c - 1];
    }

    private double[] column(double from, boolean hinge) {
        double[] column = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            column[i] = x[i] <= from ? 0 : hinge ? x[i] - from : 1;
        }
        return column;
    }

    /** Coefficients (line, then hinges), residual sum of squares. */
    private record Solution(double[] beta, double rss) {}

    private Solution solve(double[] breaks) {
        double[][] columns = new double[breaks.length + 2][];
        columns[0] = column(Double.NEGATIVE_INFINITY, false);
        columns[1] = x.clone();
        for (int j = 0; j < breaks.length; j++) {
            columns[j + 2] = column(breaks[j], true);
        }
        double[] beta = leastSquares(columns);
        if (beta.length == 0) {
            return new Solution(new double[columns.length], Double.POSITIVE_INFINITY);
        }
        double rss = 0;
        for (int i = 0; i < x.length; i++) {
            double residual = y[i];
            for (int c = 0; c < columns.length; c++) {
                residual -= beta[c] * columns[c][i];
            }
            rss += w[i] * residual * residual;
        }
        return new Solution(beta, rss);
    }

    private double[] leastSquares(double[][] columns) {
        Array2DRowRealMatrix design = new Array2DRowRealMatrix(x.length, columns.length);
        double[] right = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double root = Math.sqrt(w[i]);
            for (int c = 0; c < columns.length; c++) {
                design.setEntry(i, c, root * columns[c][i]);
            }
            right[i] = root * y[i];
        }
        QRDecomposition qr = new QRDecomposition(design, 1e-10);
        if (!qr.getSolver().isNonSingular()) {
            return new double[0];
        }
        RealVector beta = qr.getSolver().solve(new ArrayRealVector(right, false));
        return beta.toArray();
    }

    private PiecewiseFit describe(double[] breaks, Solution solution) {
        int k = breaks.length + 1;
        double[] slopes = new double[k];
        double[] levels = new double[k];
        int[] starts = new int[k];
        double slope = solution.beta[1];
        double level = solution.beta[0];
        slopes[0] = slope;
        levels[0] = level;
        for (int j = 1; j < k; j++) {
            slope += solution.beta[j + 1];
            level -= solution.beta[j + 1] * breaks[j - 1];
            slopes[j] = slope;
            levels[j] = level;
            while (starts[j] < x.length && x[starts[j]] < breaks[j - 1]) {
                starts[j]++;
            }
        }
        double[] fitted = new double[x.length];
        for (int j = 0; j < k; j++) {
            Arrays.fill(fitted, starts[j], j + 1 < k ? starts[j + 1] : x.length, 0);
            for (int i = starts[j]; i < (j + 1 < k ? starts[j + 1] : x.length); i++) {
                fitted[i] = levels[j] + slopes[j] * x[i];
            }
        }
        return new PiecewiseFit(Shape.JOINED, breaks, starts, slopes, levels, fitted, solution.rss);
    }
}
