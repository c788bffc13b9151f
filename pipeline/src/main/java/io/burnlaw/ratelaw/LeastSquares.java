package io.burnlaw.ratelaw;

import org.apache.commons.math3.exception.ConvergenceException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;

/**
 * Nonlinear least squares by the method of Levenberg and Marquardt: the one place that calls the optimizer and turns
 * its exceptions into results.
 *
 * <pre>
 *     S(parameters) = sum over i of [ (y_i - f(x_i; parameters)) / std_i ]^2   becomes least
 * </pre>
 *
 * <p><b>Source.</b> Marquardt (1963); the implementation is that of Commons Math, after MINPACK.
 */
public final class LeastSquares {

    /** Of cost, parameters and orthogonality: the smallest that doubles can meet. */
    private static final double TOLERANCE = 1e-14;

    /** A column of the Jacobian that differs from the others' span by less than this share is taken as lying in it. */
    private static final double SINGULAR = 1e-12;

    private static final int MOST_EVALUATIONS = 20_000;

    private static final int MOST_STEPS = 8;

    private LeastSquares() {}

    /** The result. */
    public sealed interface Outcome {}

    /**
     * A minimum was found and its curvature is known.
     *
     * @param covariance inverse of JᵀWJ, not scaled by the residual variance
     * @param sumOfSquares weighted, at the minimum
     * @param evaluations of the curve over all points
     */
    public record Minimum(Parameters parameters, Covariance covariance, double sumOfSquares, int evaluations)
            implements Outcome {}

    /**
     * There is no minimum.
     *
     * @param reason a clause that says why
     */
    public record Failure(String reason) implements Outcome {}

    /**
     * Minimizes the sum of squares.
     *
     * @param y   of the points, as many
     * @param std by which each residual is divided, above zero, as many
     * @return a {@link Minimum}, or a {@link Failure} where the optimizer did not arrive or the points leave a
     *         combination of parameters undetermined
     */
    public static Outcome minimize(Curve curve, double[] x, double[] y, double[] std, double[] start) {
        if (x.length != y.length || x.length != std.length || x.length < start.length) {
            throw new IllegalArgumentException(start.length + " parameters, " + x.length + " x, " + y.length + " y, "
                    + std.length + " standard deviations");
        }
        MultivariateJacobianFunction weighted = parameters -> evaluate(curve, x, y, std, parameters.toArray());
        return minimize(weighted, x.length, start);
    }

    /**
     * Minimizes the sum of squares of given residuals.
     *
     * @param count how many there are
     * @return a {@link Minimum}, or a {@link Failure}
     */
    static Outcome minimize(MultivariateJacobianFunction residuals, int count, double[] start) {
        try {
            Optimum optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(TOLERANCE)
                    .withParameterRelativeTolerance(TOLERANCE)
                    .withOrthoTolerance(TOLERANCE)
                    .optimize(new LeastSquaresBuilder()
                            .model(residuals)
                            .target(new double[count])
                            .start(start)
                            .maxEvaluations(MOST_EVALUATIONS)
                            .maxIterations(MOST_EVALUATIONS)
                            .build());
            if (!Double.isFinite(optimum.getCost())) {
                return new Failure("the sum of squares is not finite");
            }
            return polished(residuals, optimum.getPoint(), optimum.getCost(), optimum.getEvaluations());
        } catch (SingularMatrixException singular) {
            return new Failure("the points leave a combination of the parameters undetermined");
        } catch (TooManyEvaluationsException | TooManyIterationsException tooMany) {
            return new Failure("no minimum within " + MOST_EVALUATIONS + " evaluations");
        } catch (ConvergenceException notConverged) {
            return new Failure("the search for the minimum did not converge");
        }
    }

    /**
     * The sum of squares is flat at its minimum, so a search that watches it stops half its digits short. A few steps of
     * Gauss and Newton, which watch the gradient, bring the rest; they are taken as long as each is shorter than the last.
     */
    private static Minimum polished(
            MultivariateJacobianFunction residuals, RealVector start, double cost, int evaluations) {
        RealVector point = start;
        Pair<RealVector, RealMatrix> here = residuals.value(point);
        double last = Double.POSITIVE_INFINITY;
        int count = evaluations + 1;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] length = lengths(here.getSecond());
            RealMatrix scaled = scaled(here.getSecond(), length);
            RealVector change =
                    new QRDecomposition(scaled, SINGULAR).getSolver().solve(here.getFirst());
            double size = change.getNorm();
            if (!(size < 0.5 * last)) {
                break;
            }
            RealVector next = point.copy();
            for (int k = 0; k < length.length; k++) {
                next.addToEntry(k, -change.getEntry(k) / length[k]);
            }
            Pair<RealVector, RealMatrix> there = residuals.value(next);
            count++;
            if (!(there.getFirst().getNorm() <= cost * (1 + TOLERANCE))) {
                break;
            }
            point = next;
            here = there;
            last = size;
        }
        double root = here.getFirst().getNorm();
        return new Minimum(
                new Parameters(point.toArray()), new Covariance(inverse(here.getSecond())), root * root, count);
    }

    /** Inverse of JᵀWJ at given parameters. */
    static Covariance covariance(Curve curve, double[] x, double[] std, double[] parameters) {
        return new Covariance(inverse(
                evaluate(curve, x, new double[x.length], std, parameters).getSecond()));
    }

    /** Inverse of JᵀJ, with columns brought to length one first: parameters may differ by many powers of ten. */
    private static RealMatrix inverse(RealMatrix jacobian) {
        int count = jacobian.getColumnDimension();
        double[] length = lengths(jacobian);
        RealMatrix scaled = scaled(jacobian, length);
        // By R of J = QR: forming JᵀJ would square the condition number, which NIST Bennett5 does not forgive.
        RealMatrix triangle = new QRDecomposition(scaled).getR().getSubMatrix(0, count - 1, 0, count - 1);
        for (int k = 0; k < count; k++) {
            if (!(Math.abs(triangle.getEntry(k, k)) > SINGULAR)) {
                throw new SingularMatrixException();
            }
        }
        RealMatrix root = new QRDecomposition(triangle).getSolver().getInverse();
        RealMatrix inverse = root.multiply(root.transpose());
        for (int j = 0; j < count; j++) {
            for (int k = 0; k < count; k++) {
                inverse.multiplyEntry(j, k, 1 / (length[j] * length[k]));
            }
        }
        return inverse;
    }

    private static double[] lengths(RealMatrix jacobian) {
        double[] length = new double[jacobian.getColumnDimension()];
        for (int k = 0; k < length.length; k++) {
            length[k] = jacobian.getColumnVector(k).getNorm();
            if (!(length[k] > 0)) {
                throw new SingularMatrixException();
            }
        }
        return length;
    }

    private static RealMatrix scaled(RealMatrix jacobian, double[] length) {
        RealMatrix scaled = jacobian.copy();
        for (int k = 0; k < length.length; k++) {
            scaled.setColumnVector(k, jacobian.getColumnVector(k).mapDivide(length[k]));
        }
        return scaled;
    }

    private static Pair<RealVector, RealMatrix> evaluate(
            Curve curve, double[] x, double[] y, double[] std, double[] parameters) {
        double[] residual = new double[x.length];
        double[][] jacobian = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            residual[i] = (curve.value(x[i], parameters) - y[i]) / std[i];
            jacobian[i] = curve.gradient(x[i], parameters);
            for (int k = 0; k < jacobian[i].length; k++) {
                jacobian[i][k] /= std[i];
            }
        }
        return new Pair<>(new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
    }

    /** Fitted parameters of a curve, immutable. */
    static final class Parameters {

        private final double[] values;

        Parameters(double[] values) {
            this.values = values.clone();
        }

        /**
         * One of them.
         *
         * @param index from 0
         * @return its value, in the unit of the parameter
         */
        public double get(int index) {
            return values[index];
        }

        double[] toArray() {
            return values.clone();
        }
    }

    /** Covariance of fitted parameters, immutable. */
    static final class Covariance {

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
         */
        public Covariance times(double factor) {
            return new Covariance(matrix.scalarMultiply(factor));
        }
    }
}
