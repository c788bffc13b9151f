package io.burnlaw.closure;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.Arrays;
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
    private final Map<String, Integer> clusters = new HashMap<>();
    private final List<Piece> pieces = new ArrayList<>();

    /** Points of one law, as its fit weighted them; x = ln P over the reference, residuals in ln r. */
    private record Piece(String[] cluster, double[] x, double[] weight, double[] residual) {}

    LawWithout(PiecewiseLaw law, List<FitPoint> points) {
        this.law = law;
        points.forEach(each -> clusters.merge(each.cluster(), 1, Integer::sum));
        for (int piece = 0; piece < law.laws().size(); piece++) {
            int here = piece;
            pieces.add(piece(
                    law.laws().get(piece),
                    points.stream()
                            .filter(each -> law.indexAt(each.pressure()) == here)
                            .toList()));
        }
    }

    private Piece piece(RateLaw full, List<FitPoint> mine) {
        return new Piece(
                mine.stream().map(FitPoint::cluster).toArray(String[]::new),
                mine.stream()
                        .mapToDouble(each -> StrictMath.log(each.pressure() / full.referencePressure()))
                        .toArray(),
                mine.stream().mapToDouble(each -> weight(full, each)).toArray(),
                mine.stream()
                        .mapToDouble(each -> StrictMath.log(each.rate() / full.rate(each.pressure())))
                        .toArray());
    }

    boolean holds(String firing) {
        return clusters.containsKey(firing);
    }

    /** Empty where too little is left to make a law of. */
    Optional<PiecewiseLaw> without(String firing) {
        PiecewiseLaw changed = law;
        for (int piece = 0; piece < pieces.size(); piece++) {
            if (Arrays.asList(pieces.get(piece).cluster()).contains(firing)) {
                Optional<RateLaw> left = without(law.laws().get(piece), pieces.get(piece), firing);
                if (left.isEmpty()) {
                    return Optional.empty();
                }
                changed = changed.with(piece, left.orElseThrow());
            }
        }
        return Optional.of(changed);
    }

    private static Optional<RateLaw> without(RateLaw full, Piece mine, String firing) {
        double[] all = new double[3];
        double[] rest = new double[3];
        double level = 0;
        double slope = 0;
        for (int i = 0; i < mine.x().length; i++) {
            double x = mine.x()[i];
            double w = mine.weight()[i];
            add(all, w, x);
            if (mine.cluster()[i].equals(firing)) {
                double residual = mine.residual()[i];
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
