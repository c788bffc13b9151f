package io.burnlaw.closure;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The law as it would be without one firing, in closed form.
 *
 * <pre>
 *     b' = b - ( X'WX - Xc'Wc Xc )^-1 · Xc'Wc ec
 * </pre>
 * with b = (ln rate at reference, exponent), c the points of the firing, e their residuals in ln r, W the weights of the full
 * fit. Exact for the line in ln r over ln P with these weights; for the law fitted in r it is one step of Gauss and Newton
 * from the full fit, which leaves out less than the scatter squared. <b>Source.</b> Cook and Weisberg, Residuals and Influence in Regression (1982), section 2.2.
 */
final class LawWithout {

    /** Below this share of the spread with the firing, the others stand at one pressure: no exponent is left. */
    private static final double LEAST_SHARE = 0.02;

    /** A relative variance below this is what doubles make of points on a law [1]. */
    private static final double LEAST_VARIANCE = 1e-12;

    private final PiecewiseLaw law;
    private final List<FitPoint> points;
    private final Map<String, Integer> clusters = new HashMap<>();

    LawWithout(PiecewiseLaw law, List<FitPoint> points) {
        this.law = law;
        this.points = points;
        points.forEach(each -> clusters.merge(each.cluster(), 1, Integer::sum));
    }

    boolean holds(String firing) {
        return clusters.containsKey(firing);
    }

    /** Empty where too little is left to make a law of. */
    Optional<PiecewiseLaw> without(String firing) {
        PiecewiseLaw changed = law;
        for (int piece = 0; piece < law.laws().size(); piece++) {
            int here = piece;
            List<FitPoint> mine = points.stream()
                    .filter(each -> law.indexAt(each.pressure()) == here)
                    .toList();
            if (mine.stream().noneMatch(each -> each.cluster().equals(firing))) {
                continue;
            }
            Optional<RateLaw> left = without(law.laws().get(piece), mine, firing);
            if (left.isEmpty()) {
                return Optional.empty();
            }
            changed = changed.with(piece, left.orElseThrow());
        }
        return Optional.of(changed);
    }

    private Optional<RateLaw> without(RateLaw full, List<FitPoint> mine, String firing) {
        double[] all = new double[3];
        double[] rest = new double[3];
        double level = 0;
        double slope = 0;
        for (FitPoint each : mine) {
            double x = StrictMath.log(each.pressure() / full.referencePressure());
            double w = weight(full, each);
            add(all, w, x);
            if (each.cluster().equals(firing)) {
                double residual = StrictMath.log(each.rate() / full.rate(each.pressure()));
                level += w * residual;
                slope += w * x * residual;
            } else {
                add(rest, w, x);
            }
        }
        double determinant = rest[0] * rest[2] - rest[1] * rest[1];
        if (!(rest[0] > 0 && determinant / rest[0] > LEAST_SHARE * (all[2] - all[1] * all[1] / all[0]))) {
            return Optional.empty();
        }
        return Optional.of(new RateLaw(
                full.lnRateAtReference() - (rest[2] * level - rest[1] * slope) / determinant,
                full.exponent() - (rest[0] * slope - rest[1] * level) / determinant,
                full.referencePressure(),
                full.rateVariance(),
                full.covariance(),
                full.exponentVariance(),
                full.degreesOfFreedom(),
                full.residualScatter(),
                full.pressureLow(),
                full.pressureHigh(),
                full.points(),
                full.weighting(),
                full.commonError()));
    }

    /** As the fit has it: of the scatter or of the point's own uncertainty, and of the pressure's along the slope. */
    private double weight(RateLaw full, FitPoint point) {
        double ofRate = full.weighting().estimatesScale() ? full.scatterAt(point.pressure()) : point.ownRelativeStd();
        double ofPressure = full.exponent() * point.pressureStd() / point.pressure();
        double variance = Math.max(LEAST_VARIANCE, ofRate * ofRate + ofPressure * ofPressure);
        return 1 / (variance * clusters.get(point.cluster()));
    }

    private static void add(double[] sums, double w, double x) {
        sums[0] += w;
        sums[1] += w * x;
        sums[2] += w * x * x;
    }
}
