package io.burnlaw.ratelaw;

import io.burnlaw.campaign.Weighting;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The variance of each point about the law:
 *
 * <pre>
 *     v_i = σ² + ( (1 - slope_i · g_i) s_i )² + ( slope_i · u(P_i)/P_i )²
 * </pre>
 *
 * with σ² the scatter from firing to firing, zero where the weighting takes the points at their word; s_i the point's own
 * relative uncertainty, zero where it does not, unless the point is less certain than the others; g_i by how much its
 * pressure moves with an error of its rate, zero where the pressure was measured; and the pressure's uncertainty carried along the law's slope over ln P,
 * the effective variance (Orear 1982). The scatter is the one at which the weighted sum of squares equals its degrees of
 * freedom (Paule and Mandel 1982).
 *
 * <p>A cluster of m points has the weight of one: each is divided by m. The inverse of the weighted normal matrix is then
 * an upper bound of the parameters' covariance for every correlation between 0 and 1 of the points within a cluster.
 */
final class ScatterModel {

    private static final int MOST_ROUNDS = 200;

    private final double[] ownStd;
    private final double[] gain;
    private final double[] pressureStd;
    private final double[] share;
    private final int clusters;
    private final boolean estimated;
    private final boolean followsSlope;

    ScatterModel(List<FitPoint> points, Weighting weighting, boolean errorsInPressure) {
        int count = points.size();
        ownStd = new double[count];
        gain = new double[count];
        pressureStd = new double[count];
        share = new double[count];
        estimated = weighting.estimatesScale();
        Map<String, Integer> sizes = new LinkedHashMap<>();
        points.forEach(p -> sizes.merge(p.cluster(), 1, Integer::sum));
        clusters = sizes.size();
        boolean uncertain = false;
        for (int i = 0; i < count; i++) {
            FitPoint p = points.get(i);
            ownStd[i] = estimated && !p.lessCertain() ? 0 : p.ownRelativeStd();
            gain[i] = p.pressureGain();
            pressureStd[i] = errorsInPressure ? p.pressureStd() / p.pressure() : 0;
            uncertain |= pressureStd[i] > 0 || p.lessCertain();
            share[i] = sizes.get(p.cluster());
        }
        followsSlope = uncertain;
    }

    int clusters() {
        return clusters;
    }

    /** How many points share the cluster of this one. */
    double share(int i) {
        return share[i];
    }

    /** Relative uncertainty of the pressure. */
    double pressureStd(int i) {
        return pressureStd[i];
    }

    /** Whether the weights depend on the law, so that the fit must be repeated until both agree. */
    boolean followsSlope() {
        return followsSlope;
    }

    double[] variances(double scatter, double[] slopes) {
        double[] variance = new double[share.length];
        for (int i = 0; i < variance.length; i++) {
            double carried = slopes[i] * pressureStd[i];
            double own = (1 - slopes[i] * gain[i]) * ownStd[i];
            variance[i] = scatter + own * own + carried * carried;
        }
        return variance;
    }

    /** The scatter σ² ≥ 0 for these residuals; zero where it is not estimated, or where the rest explains them. */
    double scatter(double[] residuals, double[] slopes, int parameters) {
        int freedom = clusters - parameters;
        double high = 0;
        for (int i = 0; i < residuals.length; i++) {
            high += residuals[i] * residuals[i] / share[i] / freedom;
        }
        if (!estimated || !followsSlope) {
            return estimated ? high : 0;
        }
        double low = 0;
        if (sum(low, residuals, slopes) <= freedom) {
            return 0;
        }
        for (int round = 0; round < MOST_ROUNDS && high - low > 1e-15 * high; round++) {
            double middle = 0.5 * (low + high);
            if (sum(middle, residuals, slopes) > freedom) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    private double sum(double scatter, double[] residuals, double[] slopes) {
        double[] variance = variances(scatter, slopes);
        double sum = 0;
        for (int i = 0; i < residuals.length; i++) {
            sum += residuals[i] == 0 ? 0 : residuals[i] * residuals[i] / (variance[i] * share[i]);
        }
        return sum;
    }
}
