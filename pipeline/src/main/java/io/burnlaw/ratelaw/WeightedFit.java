package io.burnlaw.ratelaw;

import java.util.List;

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

    /** The smallest scatter beside errors in the pressure: a hundred-thousandth, far below any firing's. */
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

    /** What came of it. */
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
        int evaluations = 0;
        boolean settled = false;
        for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
            LeastSquares.Outcome outcome = orthogonal
                    ? orthogonal(scatter, at, parameters)
                    : LeastSquares.minimize(curve, x, y, stds(scatter, at, parameters), parameters);
            if (outcome instanceof LeastSquares.Failure failure) {
                return new Failed(failure.reason());
            }
            LeastSquares.Minimum minimum = (LeastSquares.Minimum) outcome;
            evaluations += minimum.evaluations();
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
        return new WeightedSolution(
                curve, x, y, at, variance, model, parameters, lnPressureUnit, lnRateUnit, evaluations, settled);
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
}
