package io.burnlaw.ratelaw;

import org.apache.commons.math3.linear.RealMatrix;

/** Covariance of fitted parameters, immutable. */
public final class Covariance {

    private final RealMatrix matrix;

    Covariance(RealMatrix matrix) {
        this.matrix = matrix.copy();
    }

    /**
     * One element.
     *
     * @param row    from 0
     * @param column from 0
     * @return covariance, in the product of the parameters' units
     */
    public double get(int row, int column) {
        return matrix.getEntry(row, column);
    }

    /**
     * Standard deviation of a parameter.
     *
     * @param index from 0
     * @return in the unit of the parameter
     */
    public double std(int index) {
        return Math.sqrt(matrix.getEntry(index, index));
    }

    /**
     * The same covariance with another scale.
     *
     * @param factor by which every element is multiplied, such as the residual variance
     * @return the scaled covariance
     */
    public Covariance times(double factor) {
        return new Covariance(matrix.scalarMultiply(factor));
    }
}
