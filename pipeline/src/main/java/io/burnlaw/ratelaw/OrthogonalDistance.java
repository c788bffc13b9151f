package io.burnlaw.ratelaw;

import java.util.Arrays;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * Least squares with errors in both coordinates: each point may move along x as well.
 *
 * <pre>
 *     sum over i of [ (y_i - f(x_i + δ_i; parameters)) / u(y_i) ]² + [ δ_i / u(x_i) ]²   becomes least
 *                                                              over the parameters and all δ_i
 * </pre>
 *
 * A point whose u(x_i) is zero does not move.
 *
 * <p><b>Source.</b> Boggs, Byrd and Schnabel (1987); Boggs, Byrd, Rogers and Schnabel, NISTIR 4834 (1992).
 */
public final class OrthogonalDistance {

    private OrthogonalDistance() {}

    /**
     * Minimizes the sum of squared distances.
     *
     * @param curve to be fitted
     * @param x     of the points
     * @param y     of the points, as many
     * @param xStd  standard uncertainty of each x, at least zero, as many
     * @param yStd  standard uncertainty of each y, above zero, as many
     * @param start parameters to start from
     * @return a {@link LeastSquares.Minimum} whose parameters are the curve's, followed by the shifts δ of the points
     *         that may move, in their order, with the covariance of all of them, not scaled by the residual variance;
     *         or a {@link LeastSquares.Failure}
     */
    public static LeastSquares.Outcome minimize(
            Curve curve, double[] x, double[] y, double[] xStd, double[] yStd, double[] start) {
        return minimize(curve, x, y, xStd, yStd, start, new double[x.length]);
    }

    static LeastSquares.Outcome minimize(
            Curve curve, double[] x, double[] y, double[] xStd, double[] yStd, double[] start, double[] shifts) {
        int parameters = start.length;
        int moving = (int) Arrays.stream(xStd).filter(std -> std > 0).count();
        double[] first = Arrays.copyOf(start, parameters + moving);
        int next = parameters;
        for (int i = 0; i < x.length; i++) {
            if (xStd[i] > 0) {
                first[next++] = shifts[i];
            }
        }
        MultivariateJacobianFunction residuals =
                point -> evaluate(curve, x, y, xStd, yStd, parameters, moving, point.toArray());
        return LeastSquares.minimize(residuals, x.length + moving, first);
    }

    private static Pair<RealVector, RealMatrix> evaluate(
            Curve curve,
            double[] x,
            double[] y,
            double[] xStd,
            double[] yStd,
            int parameters,
            int moving,
            double[] point) {
        double[] p = Arrays.copyOf(point, parameters);
        double[] residual = new double[x.length + moving];
        double[][] jacobian = new double[x.length + moving][parameters + moving];
        int next = 0;
        for (int i = 0; i < x.length; i++) {
            boolean moves = xStd[i] > 0;
            double shift = moves ? point[parameters + next] : 0;
            residual[i] = (curve.value(x[i] + shift, p) - y[i]) / yStd[i];
            double[] gradient = curve.gradient(x[i] + shift, p);
            for (int k = 0; k < parameters; k++) {
                jacobian[i][k] = gradient[k] / yStd[i];
            }
            if (moves) {
                jacobian[i][parameters + next] = curve.slope(x[i] + shift, p) / yStd[i];
                residual[x.length + next] = shift / xStd[i];
                jacobian[x.length + next][parameters + next] = 1 / xStd[i];
                next++;
            }
        }
        return new Pair<>(new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
    }
}
