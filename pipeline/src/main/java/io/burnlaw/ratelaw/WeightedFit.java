package io.burnlaw.ratelaw;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The weighted least-squares fit of a power law to points, in the scale in which the weighting has its scatter: between
 * logarithms for proportional and measured weights, in the rate itself for constant ones.
 *
 * <p>A point's variance is
 *
 * <pre>
 *     v_i = σ² + s_i² + (slope at the point · u(P_i)/P_i)²
 * </pre>
 *
 * with σ² the scatter, estimated so that the weighted sum of squares equals its degrees of freedom (Paule and Mandel
 * 1982) where the weighting estimates it and zero where it does not, and s_i the point's own relative uncertainty where
 * the weighting is by measurement. The last term is the effective variance (Orear 1982), at the law as found, iterated.
 * Points of a cluster of m share one weight: each is divided by m.
 */
final class WeightedFit {

    private static final int MOST_ROUNDS = 200;

    private final Curve curve;
    private final double[] x;
    private final double[] y;
    private final double[] own;
    private final double[] pressureStd;
    private final double[] share;
    private final int clusters;
    private final boolean estimatesScale;
    private final double lnPressureUnit;
    private final double lnRateUnit;

    private WeightedFit(List<FitPoint> points, Weighting weighting, boolean pressureErrors) {
        int count = points.size();
        x = new double[count];
        y = new double[count];
        own = new double[count];
        pressureStd = new double[count];
        share = new double[count];
        estimatesScale = weighting.estimatesScale();
        boolean additive = weighting == Weighting.CONSTANT;
        curve = additive ? Curve.POWER : Curve.LINE;
        // Near one in both coordinates whatever the units, so that tolerances mean the same for every campaign.
        lnPressureUnit =
                points.stream().mapToDouble(p -> StrictMath.log(p.pressure())).sum() / count;
        lnRateUnit = points.stream().mapToDouble(p -> StrictMath.log(p.rate())).sum() / count;
        Map<String, Integer> sizes = new LinkedHashMap<>();
        points.forEach(p -> sizes.merge(p.cluster(), 1, Integer::sum));
        clusters = sizes.size();
        for (int i = 0; i < count; i++) {
            FitPoint p = points.get(i);
            x[i] = StrictMath.log(p.pressure()) - lnPressureUnit;
            double ln = StrictMath.log(p.rate()) - lnRateUnit;
            y[i] = additive ? StrictMath.exp(ln) : ln;
            own[i] = estimatesScale ? 0 : p.ownRelativeStd();
            pressureStd[i] = pressureErrors ? p.pressureStd() / p.pressure() : 0;
            share[i] = sizes.get(p.cluster());
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

    static Outcome fit(List<FitPoint> points, Weighting weighting, boolean pressureErrors) {
        return new WeightedFit(points, weighting, pressureErrors).solve();
    }

    private Outcome solve() {
        double[] start = straightLine();
        double[] variance = new double[x.length];
        double scatter = estimatesScale ? 1 : 0;
        boolean iterate = false;
        for (int i = 0; i < x.length; i++) {
            variance[i] = scatter + own[i] * own[i];
            iterate |= pressureStd[i] > 0;
        }
        if (!estimatesScale && iterate) {
            variance = variances(0, start);
        }
        LeastSquares.Minimum minimum = null;
        int evaluations = 0;
        boolean settled = false;
        for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
            LeastSquares.Outcome outcome = LeastSquares.minimize(curve, x, y, stds(variance), start);
            if (outcome instanceof LeastSquares.Failure failure) {
                return new Failed(failure.reason());
            }
            LeastSquares.Minimum next = (LeastSquares.Minimum) outcome;
            evaluations += next.evaluations();
            double[] found = next.parameters().toArray();
            settled = !iterate
                    || minimum != null && Math.abs(found[0] - start[0]) + Math.abs(found[1] - start[1]) < 1e-13;
            minimum = next;
            start = found;
            if (estimatesScale) {
                scatter = iterate ? scatter(found) : next.sumOfSquares() / (clusters - 2);
            }
            if (iterate) {
                variance = variances(scatter, found);
            }
        }
        if (!iterate && estimatesScale) {
            // Exact points would give a variance of zero and no weights at all; the smallest scatter that doubles
            // carry.
            scatter = Math.max(scatter, 1e-30);
            Arrays.fill(variance, scatter);
        }
        return new WeightedSolution(
                curve,
                x,
                y,
                variance,
                share,
                clusters,
                scatter,
                start,
                lnPressureUnit,
                lnRateUnit,
                evaluations,
                settled);
    }

    /** The scatter σ² ≥ 0 at which the weighted sum of squares equals its degrees of freedom, by bisection. */
    private double scatter(double[] parameters) {
        double high = 0;
        for (int i = 0; i < x.length; i++) {
            double e = y[i] - curve.value(x[i], parameters);
            high += e * e / share[i] / (clusters - 2);
        }
        if (excess(0, parameters) <= 0) {
            return 0;
        }
        double low = 0;
        for (int round = 0; round < 200 && high - low > 1e-15 * high; round++) {
            double middle = 0.5 * (low + high);
            if (excess(middle, parameters) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    private double excess(double scatter, double[] parameters) {
        double[] variance = variances(scatter, parameters);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double e = y[i] - curve.value(x[i], parameters);
            if (e != 0) {
                sum += e * e / (variance[i] * share[i]);
            }
        }
        return sum - (clusters - 2);
    }

    private double[] variances(double scatter, double[] parameters) {
        double[] variance = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double carried = curve.slope(x[i], parameters) * pressureStd[i];
            variance[i] = scatter + own[i] * own[i] + carried * carried;
        }
        return variance;
    }

    private double[] stds(double[] variance) {
        double[] std = new double[variance.length];
        for (int i = 0; i < variance.length; i++) {
            std[i] = Math.sqrt(Math.max(variance[i], 1e-30) * share[i]);
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
