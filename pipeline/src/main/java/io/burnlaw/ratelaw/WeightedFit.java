package io.burnlaw.ratelaw;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.LeastSquares.Parameters;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * The weighted least-squares fit of a power law to points, in the scale in which the weighting has its scatter: between
 * logarithms for proportional and measured weights, in the rate itself for constant ones. Weights: {@link ScatterModel}.
 */
final class WeightedFit {

    private static final int MOST_ROUNDS = 300;

    /** Where rounds agree to this, in ln rate and exponent, weights and law agree with each other. */
    private static final double SETTLED = 1e-12;

    /** A smaller variance than this, 1e-15 of the rate squared, is what doubles make of points on a law. */
    private static final double LEAST_VARIANCE = 1e-30;

    /** The smallest scatter apart from errors in the pressure: a hundred-thousandth, far below any firing's. */
    private static final double LEAST_BESIDE_PRESSURE = 1e-10;

    private final Curve curve;
    private final double[] x;
    private final double[] y;
    private final ScatterModel model;
    private final boolean orthogonal;
    private final double lnPressureUnit;
    private final double lnRateUnit;

    private WeightedFit(List<FitPoint> points, Weighting weighting, PressureErrors errors) {
        int count = points.size();
        x = new double[count];
        y = new double[count];
        model = new ScatterModel(points, weighting, errors != PressureErrors.NONE);
        orthogonal = errors == PressureErrors.ORTHOGONAL_DISTANCE && model.followsSlope();
        boolean additive = weighting == Weighting.CONSTANT;
        curve = additive ? Curve.POWER : Curve.LINE;
        // Near one in both coordinates whatever the units, so that tolerances mean the same for every campaign.
        lnPressureUnit =
                points.stream().mapToDouble(p -> StrictMath.log(p.pressure())).sum() / count;
        lnRateUnit = points.stream().mapToDouble(p -> StrictMath.log(p.rate())).sum() / count;
        for (int i = 0; i < count; i++) {
            FitPoint p = points.get(i);
            x[i] = StrictMath.log(p.pressure()) - lnPressureUnit;
            double ln = StrictMath.log(p.rate()) - lnRateUnit;
            y[i] = additive ? StrictMath.exp(ln) : ln;
        }
    }

    /** The result. */
    sealed interface Outcome permits WeightedSolution, Failed {}

    /**
     * There is no solution.
     *
     * @param reason a clause that says why
     */
    record Failed(String reason) implements Outcome {}

    static Outcome fit(List<FitPoint> points, Weighting weighting, PressureErrors errors) {
        return new WeightedFit(points, weighting, errors).solve();
    }

    private Outcome solve() {
        double[] parameters = straightLine();
        double[] at = x;
        double scatter = model.scatter(residuals(at, parameters), slopes(at, parameters), 2);
        boolean settled = false;
        for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
            LeastSquares.Outcome outcome = orthogonal
                    ? orthogonal(scatter, at, parameters)
                    : LeastSquares.minimize(curve, x, y, stds(scatter, at, parameters), parameters);
            if (outcome instanceof LeastSquares.Failure failure) {
                return new Failed(failure.reason());
            }
            LeastSquares.Minimum minimum = (LeastSquares.Minimum) outcome;
            double[] all = minimum.parameters().toArray();
            double[] found = {all[0], all[1]};
            at = orthogonal ? adjusted(all) : x;
            double next = model.scatter(residuals(at, found), slopes(at, found), 2);
            settled = !model.followsSlope()
                    || Math.abs(found[0] - parameters[0])
                                    + Math.abs(found[1] - parameters[1])
                                    + Math.abs(Math.sqrt(next) - Math.sqrt(scatter))
                            < SETTLED;
            parameters = found;
            scatter = next;
        }
        double[] variance = model.variances(scatter, slopes(at, parameters));
        for (int i = 0; i < variance.length; i++) {
            variance[i] = Math.max(variance[i], LEAST_VARIANCE);
        }
        return new WeightedSolution(curve, x, y, at, variance, model, parameters, lnPressureUnit, lnRateUnit);
    }

    /** Distances in both directions, the law's two parameters first and then the shifts of ln P. */
    private LeastSquares.Outcome orthogonal(double scatter, double[] at, double[] parameters) {
        double[] xStd = new double[x.length];
        double[] yStd = new double[x.length];
        double[] withoutPressure = model.variances(Math.max(scatter, LEAST_BESIDE_PRESSURE), new double[x.length]);
        for (int i = 0; i < x.length; i++) {
            xStd[i] = model.pressureStd(i) * Math.sqrt(model.share(i));
            yStd[i] = Math.sqrt(withoutPressure[i] * model.share(i));
        }
        double[] shifts = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            shifts[i] = at[i] - x[i];
        }
        return OrthogonalDistance.minimize(curve, x, y, xStd, yStd, parameters, shifts);
    }

    private double[] adjusted(double[] all) {
        double[] at = x.clone();
        int next = 2;
        for (int i = 0; i < x.length; i++) {
            if (model.pressureStd(i) > 0) {
                at[i] += all[next++];
            }
        }
        return at;
    }

    /** About the tangent of the law at the adjusted pressure; where nothing is adjusted, about the law. */
    private double[] residuals(double[] at, double[] parameters) {
        return WeightedSolution.residuals(curve, x, y, at, parameters);
    }

    private double[] slopes(double[] at, double[] parameters) {
        double[] slopes = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            slopes[i] = curve.slope(at[i], parameters);
        }
        return slopes;
    }

    private double[] stds(double scatter, double[] at, double[] parameters) {
        double[] variance = model.variances(scatter, slopes(at, parameters));
        double[] std = new double[variance.length];
        for (int i = 0; i < variance.length; i++) {
            std[i] = Math.sqrt(Math.max(variance[i], LEAST_VARIANCE) * model.share(i));
        }
        return std;
    }

    /** The straight line through the logarithms: a place to start from, and another estimator than the fit itself. */
    private double[] straightLine() {
        double sxx = 0;
        double sxy = 0;
        double ySum = 0;
        for (int i = 0; i < x.length; i++) {
            double ln = curve == Curve.POWER ? StrictMath.log(y[i]) : y[i];
            sxx += x[i] * x[i];
            sxy += x[i] * ln;
            ySum += ln;
        }
        return new double[] {ySum / x.length, sxy / sxx};
    }

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
     * <p>The best δ_i depends on its own point and the parameters only, so it is found for given parameters, and what
     * is left is a problem of as many residuals as points:
     *
     * <pre>
     *     d_i                = sign(f - y_i) sqrt( [ (f - y_i) / u(y_i) ]² + [ δ_i / u(x_i) ]² )
     *     d d_i / d parameter = df/d parameter / sqrt( u(y_i)² + (df/dx)² u(x_i)² )
     * </pre>
     *
     * at x_i + δ_i. Time grows with the number of points, not with its cube.
     *
     * <p><b>Source.</b> Boggs, Byrd and Schnabel (1987); Boggs, Byrd, Rogers and Schnabel, NISTIR 4834 (1992). The
     * derivative of a least value by what it depends on: the envelope theorem; JᵀJ is that of the whole problem with
     * the δ_i eliminated (Schur complement).
     */
    static final class OrthogonalDistance {

        private static final int MOST_STEPS = 60;
        private static final int MOST_HALVINGS = 40;

        private final Curve curve;
        private final double[] x;
        private final double[] y;
        private final double[] xStd;
        private final double[] yStd;
        private final double[] first;

        private OrthogonalDistance(
                Curve curve, double[] x, double[] y, double[] xStd, double[] yStd, double[] firstShifts) {
            this.curve = curve;
            this.x = x;
            this.y = y;
            this.xStd = xStd;
            this.yStd = yStd;
            this.first = firstShifts;
        }

        /**
         * Minimizes the sum of squared distances.
         *
         * @param y    of the points, as many
         * @param xStd standard uncertainty of each x, at least zero, as many
         * @param yStd standard uncertainty of each y, above zero, as many
         * @return a {@link LeastSquares.Minimum} whose parameters are the curve's, followed by the shifts δ of the
         *         points that may move, in their order, with the covariance of the curve's, not scaled by the residual
         *         variance; or a {@link LeastSquares.Failure}
         */
        public static LeastSquares.Outcome minimize(
                Curve curve, double[] x, double[] y, double[] xStd, double[] yStd, double[] start) {
            return minimize(curve, x, y, xStd, yStd, start, new double[x.length]);
        }

        static LeastSquares.Outcome minimize(
                Curve curve, double[] x, double[] y, double[] xStd, double[] yStd, double[] start, double[] shifts) {
            OrthogonalDistance distance = new OrthogonalDistance(curve, x, y, xStd, yStd, shifts);
            MultivariateJacobianFunction residuals = point -> distance.evaluate(point.toArray());
            LeastSquares.Outcome outcome = LeastSquares.minimize(residuals, x.length, start);
            return outcome instanceof LeastSquares.Minimum minimum ? distance.withShifts(minimum) : outcome;
        }

        private LeastSquares.Minimum withShifts(LeastSquares.Minimum minimum) {
            double[] parameters = minimum.parameters().toArray();
            double[] all = Arrays.copyOf(parameters, parameters.length + x.length);
            int next = parameters.length;
            for (int i = 0; i < x.length; i++) {
                if (xStd[i] > 0) {
                    all[next++] = shift(i, parameters);
                }
            }
            return new LeastSquares.Minimum(
                    new Parameters(Arrays.copyOf(all, next)),
                    minimum.covariance(),
                    minimum.sumOfSquares(),
                    minimum.evaluations());
        }

        private Pair<RealVector, RealMatrix> evaluate(double[] parameters) {
            double[] residual = new double[x.length];
            double[][] jacobian = new double[x.length][];
            for (int i = 0; i < x.length; i++) {
                double shift = xStd[i] > 0 ? shift(i, parameters) : 0;
                double at = x[i] + shift;
                double inY = (curve.value(at, parameters) - y[i]) / yStd[i];
                double inX = xStd[i] > 0 ? shift / xStd[i] : 0;
                residual[i] = Math.copySign(Math.sqrt(inY * inY + inX * inX), inY);
                double along = curve.slope(at, parameters) * xStd[i];
                double across = Math.sqrt(yStd[i] * yStd[i] + along * along);
                jacobian[i] = curve.gradient(at, parameters);
                for (int k = 0; k < jacobian[i].length; k++) {
                    jacobian[i][k] /= across;
                }
            }
            return new Pair<>(new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
        }

        /** The δ of a point that is best for given parameters: steps of Gauss and Newton, halved where they do harm. */
        private double shift(int i, double[] parameters) {
            double shift = first[i];
            double square = square(i, shift, parameters);
            for (int step = 0; step < MOST_STEPS; step++) {
                double slope = curve.slope(x[i] + shift, parameters);
                double off = y[i] - curve.value(x[i] + shift, parameters);
                double xVariance = xStd[i] * xStd[i];
                double better =
                        xVariance * slope * (off + slope * shift) / (yStd[i] * yStd[i] + slope * slope * xVariance);
                double change = better - shift;
                double next = square(i, better, parameters);
                for (int half = 0; half < MOST_HALVINGS && !(next <= square); half++) {
                    change /= 2;
                    next = square(i, shift + change, parameters);
                }
                if (!(next < square)) {
                    break;
                }
                shift += change;
                square = next;
                if (Math.abs(change) <= 1e-16 * Math.abs(shift)) {
                    break;
                }
            }
            return shift;
        }

        private double square(int i, double shift, double[] parameters) {
            double inY = (curve.value(x[i] + shift, parameters) - y[i]) / yStd[i];
            double inX = shift / xStd[i];
            return inY * inY + inX * inX;
        }
    }
}
