package io.burnlaw.ratelaw;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * How each point lies about the law: studentized residuals and Cook's distance.
 *
 * <p><b>Source.</b> Cook and Weisberg (1982), ch. 2.
 */
final class Residuals {

    private Residuals() {}

    static List<Residual> of(WeightedSolution s, List<FitPoint> points, Weighting weighting) {
        int freedom = s.clusters - 2;
        List<Residual> residuals = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            FitPoint p = points.get(i);
            double ln = StrictMath.log(p.rate());
            double lnFitted = s.lnRateUnit + s.parameters[0] + s.parameters[1] * s.x[i];
            double h = Math.min(s.leverage[i], 1);
            double room = Math.sqrt(s.variance[i] * (1 - h));
            double internal = room > 0 ? s.residual[i] / room : 0;
            double external = external(internal, freedom, weighting.estimatesScale());
            residuals.add(new Residual(
                    p.id(),
                    p.pressure(),
                    p.rate(),
                    StrictMath.exp(lnFitted),
                    ln - lnFitted,
                    h,
                    internal,
                    external,
                    Math.min(1, points.size() * chance(external, freedom - 1, weighting.estimatesScale())),
                    h < 1 ? internal * internal * h / (2 * (1 - h)) : Double.POSITIVE_INFINITY));
        }
        return residuals;
    }

    private static double external(double internal, int freedom, boolean estimatesScale) {
        double rest = freedom - internal * internal;
        return estimatesScale && freedom > 1 && rest > 0 ? internal * Math.sqrt((freedom - 1) / rest) : internal;
    }

    /** Two-sided probability of so large a residual at one point; one where nothing is left to judge it by. */
    private static double chance(double external, int freedom, boolean estimatesScale) {
        double size = Math.abs(external);
        if (!estimatesScale) {
            return 2 * NormalDistribution.of(0, 1).survivalProbability(size);
        }
        return freedom < 1 ? 1 : 2 * TDistribution.of(freedom).survivalProbability(size);
    }
}
