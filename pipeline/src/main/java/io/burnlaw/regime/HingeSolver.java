package io.burnlaw.regime;

/** Weighted least squares on a line and columns beside it, by modified Gram-Schmidt with the values as last column. */
final class HingeSolver {

    /** Below this share of its own length a column is a mixture of those before it. */
    private static final double DEPENDENT = 1e-10;

    private final double[] root;
    private final double[] values;

    /** Coefficients, none where the columns depend on each other; and the residual sum of squares. */
    record Solution(double[] beta, double rss) {
        boolean exists() {
            return beta.length > 0;
        }
    }

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
