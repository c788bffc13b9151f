package io.burnlaw.regime;

import io.burnlaw.regime.Regimes.Shape;

/**
 * Exact least squares for pieces that meet, from a start on the grid. Between two neighbouring points the sum of squares
 * as a function of one break is that of two free lines wherever these cross in that gap, and takes its least value at an
 * end of the gap otherwise (Hudson 1966); so each break in turn is put at its exact optimum, the others held, until none
 * moves. All together are then moved by the linearized step of Muggeo (2003) as long as that gains.
 */
final class JoinedFit {

    private static final int MOST_SWEEPS = 40;
    private static final int MOST_STEPS = 60;

    /** Points on either side of a break among which it is moved in one sweep. */
    private static final int REACH = 12;

    private final Sample sample;
    private final double[] x;
    private final HingeSolver solver;
    private final int minimumPoints;

    private JoinedFit(Sample sample, double[] y, int minimumPoints) {
        this.sample = sample;
        this.x = sample.xs();
        this.solver = new HingeSolver(y, sample.ws());
        this.minimumPoints = minimumPoints;
    }

    static PiecewiseFit of(Sample sample, double[] y, double[] start, int minimumPoints) {
        JoinedFit fit = new JoinedFit(sample, y, minimumPoints);
        return fit.describe(fit.polished(fit.swept(start.clone())));
    }

    private double[] swept(double[] breaks) {
        double rss = solve(breaks).rss();
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            double before = rss;
            for (int j = 0; j < breaks.length; j++) {
                rss = improve(breaks, j, rss);
            }
            if (breaks.length < 2 || before - rss <= 1e-6 * rss) {
                break;
            }
        }
        return breaks;
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
            double[] candidates = {crossing(breaks, j, i), x[i - 1], x[i]};
            for (double candidate : candidates) {
                if (candidate >= x[i - 1] && candidate <= x[i]) {
                    double[] tried = breaks.clone();
                    tried[j] = candidate;
                    double sum = allowed(tried) ? solve(tried).rss() : Double.POSITIVE_INFINITY;
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

    private boolean allowed(double[] breaks) {
        for (int i = 1; i < breaks.length; i++) {
            if (!(breaks[i] > breaks[i - 1])) {
                return false;
            }
        }
        return JoinedSearch.carries(sample, breaks, minimumPoints);
    }

    /** Where two free lines that part between points i - 1 and i cross, the other breaks held; NaN where they don't. */
    private double crossing(double[] breaks, int j, int i) {
        double[][] columns = new double[breaks.length + 3][];
        int c = 0;
        columns[c++] = column(Double.NEGATIVE_INFINITY, false);
        columns[c++] = x;
        for (int other = 0; other < breaks.length; other++) {
            if (other != j) {
                columns[c++] = column(breaks[other], true);
            }
        }
        double middle = (x[i - 1] + x[i]) / 2;
        columns[c++] = column(middle, true);
        columns[c] = column(middle, false);
        double[] beta = solver.solve(columns).beta();
        return beta.length == 0 ? Double.NaN : middle - beta[c] / beta[c - 1];
    }

    /** All breaks at once: the coefficient of each step column over that of its hinge says how far the break is off. */
    private double[] polished(double[] start) {
        double[] breaks = start;
        double rss = solve(breaks).rss();
        for (int step = 0; step < MOST_STEPS; step++) {
            int k = breaks.length;
            double[][] columns = new double[2 * k + 2][];
            columns[0] = column(Double.NEGATIVE_INFINITY, false);
            columns[1] = x;
            for (int j = 0; j < k; j++) {
                columns[2 + j] = column(breaks[j], true);
                columns[2 + k + j] = column(breaks[j], false);
            }
            double[] beta = solver.solve(columns).beta();
            if (beta.length == 0) {
                return breaks;
            }
            double[] tried = new double[k];
            for (int j = 0; j < k; j++) {
                tried[j] = breaks[j] - beta[2 + k + j] / beta[2 + j];
            }
            double sum = allowed(tried) ? solve(tried).rss() : Double.POSITIVE_INFINITY;
            if (!(sum < rss)) {
                return breaks;
            }
            rss = sum;
            breaks = tried;
        }
        return breaks;
    }

    private double[] column(double from, boolean hinge) {
        double[] column = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            column[i] = x[i] <= from ? 0 : hinge ? x[i] - from : 1;
        }
        return column;
    }

    private HingeSolver.Solution solve(double[] breaks) {
        double[][] columns = new double[breaks.length + 2][];
        columns[0] = column(Double.NEGATIVE_INFINITY, false);
        columns[1] = x;
        for (int j = 0; j < breaks.length; j++) {
            columns[j + 2] = column(breaks[j], true);
        }
        return solver.solve(columns);
    }

    private PiecewiseFit describe(double[] breaks) {
        HingeSolver.Solution solution = solve(breaks);
        int k = breaks.length + 1;
        double[] slopes = new double[k];
        double[] levels = new double[k];
        int[] starts = new int[k];
        slopes[0] = solution.beta()[1];
        levels[0] = solution.beta()[0];
        for (int j = 1; j < k; j++) {
            slopes[j] = slopes[j - 1] + solution.beta()[j + 1];
            levels[j] = levels[j - 1] - solution.beta()[j + 1] * breaks[j - 1];
            while (starts[j] < x.length && x[starts[j]] < breaks[j - 1]) {
                starts[j]++;
            }
        }
        double[] fitted = new double[x.length];
        for (int j = 0; j < k; j++) {
            for (int i = starts[j]; i < (j + 1 < k ? starts[j + 1] : x.length); i++) {
                fitted[i] = levels[j] + slopes[j] * x[i];
            }
        }
        return new PiecewiseFit(Shape.JOINED, breaks, starts, slopes, levels, fitted, solution.rss());
    }

    /**
     * Weighted least squares on a line and columns beside it, by modified Gram-Schmidt with the values as last column.
     */
    static final class HingeSolver {

        /** Below this share of its own length a column is a mixture of those before it. */
        private static final double DEPENDENT = 1e-10;

        private final double[] root;
        private final double[] values;

        /** Coefficients, none where the columns depend on each other; and the residual sum of squares. */
        record Solution(double[] beta, double rss) {}

        HingeSolver(double[] values, double[] weights) {
            int n = values.length;
            this.values = new double[n];
            this.root = new double[n];
            for (int i = 0; i < n; i++) {
                root[i] = Math.sqrt(weights[i]);
                this.values[i] = root[i] * values[i];
            }
        }

        Solution solve(double[][] columns) {
            int n = values.length;
            int p = columns.length;
            double[][] q = new double[p][n];
            double[][] r = new double[p][p];
            double[] along = new double[p];
            double[] left = values.clone();
            for (int c = 0; c < p; c++) {
                double length = 0;
                for (int i = 0; i < n; i++) {
                    q[c][i] = root[i] * columns[c][i];
                    length += q[c][i] * q[c][i];
                }
                for (int d = 0; d < c; d++) {
                    r[d][c] = dot(q[d], q[c]);
                    subtract(q[c], q[d], r[d][c]);
                }
                double norm = Math.sqrt(dot(q[c], q[c]));
                if (!(norm > DEPENDENT * Math.sqrt(length))) {
                    return new Solution(new double[0], Double.POSITIVE_INFINITY);
                }
                r[c][c] = norm;
                for (int i = 0; i < n; i++) {
                    q[c][i] /= norm;
                }
                along[c] = dot(q[c], left);
                subtract(left, q[c], along[c]);
            }
            double[] beta = new double[p];
            for (int c = p - 1; c >= 0; c--) {
                double sum = along[c];
                for (int d = c + 1; d < p; d++) {
                    sum -= r[c][d] * beta[d];
                }
                beta[c] = sum / r[c][c];
            }
            return new Solution(beta, dot(left, left));
        }

        private static double dot(double[] a, double[] b) {
            double sum = 0;
            for (int i = 0; i < a.length; i++) {
                sum += a[i] * b[i];
            }
            return sum;
        }

        private static void subtract(double[] from, double[] unit, double times) {
            for (int i = 0; i < from.length; i++) {
                from[i] -= times * unit[i];
            }
        }
    }
}
