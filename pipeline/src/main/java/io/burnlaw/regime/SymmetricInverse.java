package io.burnlaw.regime;

import java.util.Optional;

/** Inverses of small symmetric positive matrices, packed for the quadratic forms that they make. */
final class SymmetricInverse {

    /** Below this share of its own square, a column is taken to be a mixture of the others. */
    private static final double DEPENDENT = 1e-9;

    private SymmetricInverse() {}

    /**
     * Inverse of the part of a matrix that a set of its rows and columns picks.
     *
     * @return row by row, lower triangle with the terms off the diagonal doubled; empty where it is singular
     */
    static Optional<double[]> of(double[][] matrix, int[] set) {
        int n = set.length;
        double[][] a = new double[n][2 * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = matrix[set[i]][set[j]];
            }
            a[i][n + i] = 1;
        }
        for (int p = 0; p < n; p++) {
            double pivot = a[p][p];
            if (!(pivot > DEPENDENT * matrix[set[p]][set[p]])) {
                return Optional.empty();
            }
            for (int j = 0; j < 2 * n; j++) {
                a[p][j] /= pivot;
            }
            for (int i = 0; i < n; i++) {
                double factor = i == p ? 0 : a[i][p];
                for (int j = 0; factor != 0 && j < 2 * n; j++) {
                    a[i][j] -= factor * a[p][j];
                }
            }
        }
        double[] packed = new double[n * (n + 1) / 2];
        int at = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                packed[at++] = i == j ? a[i][n + i] : a[i][n + j] + a[j][n + i];
            }
        }
        return Optional.of(packed);
    }
}
