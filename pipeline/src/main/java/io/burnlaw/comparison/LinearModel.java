package io.burnlaw.comparison;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A linear model fitted by weighted least squares.
 *
 * @param coefficients of the columns
 * @param unscaled     their covariance for a residual variance of one
 * @param squares      weighted sum of the squared residuals
 * @param degrees      of freedom of the residuals
 */
record LinearModel(RealVector coefficients, RealMatrix unscaled, double squares, int degrees) {

    static LinearModel fit(double[][] design, double[] y, double[] weights, int independent) {
        RealMatrix scaled = new Array2DRowRealMatrix(design);
        RealVector target = new ArrayRealVector(y);
        for (int i = 0; i < y.length; i++) {
            double root = Math.sqrt(weights[i]);
            scaled.setRowVector(i, scaled.getRowVector(i).mapMultiply(root));
            target.setEntry(i, root * y[i]);
        }
        DecompositionSolver solver = new QRDecomposition(scaled).getSolver();
        RealVector solved = solver.solve(target);
        RealVector residual = target.subtract(scaled.operate(solved));
        RealMatrix inverse = solver.getInverse();
        return new LinearModel(
                solved,
                inverse.multiply(inverse.transpose()),
                residual.dotProduct(residual),
                independent - solved.getDimension());
    }

    double coefficient(int column) {
        return coefficients.getEntry(column);
    }

    double variance() {
        return squares / degrees;
    }

    double std(int column) {
        return Math.sqrt(variance() * unscaled.getEntry(column, column));
    }
}
