package io.burnlaw.prediction;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.Collections;
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
final class LeaveOneOutLaw {

    /** Below this share of the spread with the firing, the others stand at one pressure: no exponent is left. */
    private static final double LEAST_SHARE = 0.02;

    /** A relative variance below this is what doubles make of points on a law [1]. */
    private static final double LEAST_VARIANCE = 1e-12;

    private final PiecewiseLaw law;
    private final Map<String, Integer> clusters = new HashMap<>();
    private final List<Piece> pieces = new ArrayList<>();

    /**
     * Points of one law, as its fit weighted them, by the cluster that goes with them: what a cluster adds to the sums, and
     * the sums over those before it and after it. Nothing is subtracted, so that a heavy cluster leaves the others exact.
     */
    private record Piece(Map<String, Integer> place, List<Sums> own, List<Sums> before, List<Sums> after) {

        Sums all() {
            return before.get(own.size());
        }

        Sums without(int cluster) {
            return before.get(cluster).plus(after.get(cluster + 1));
        }
    }

    /**
     * Sums over points of weight w, x = ln P over the reference, and e, their residual in ln r.
     *
     * @param wxx of w x x
     * @param wxe of w x e
     */
    private record Sums(double w, double wx, double wxx, double we, double wxe) {

        static final Sums NONE = new Sums(0, 0, 0, 0, 0);

        static Sums of(double w, double x, double residual) {
            return new Sums(w, w * x, w * x * x, w * residual, w * x * residual);
        }

        Sums plus(Sums other) {
            return new Sums(w + other.w, wx + other.wx, wxx + other.wxx, we + other.we, wxe + other.wxe);
        }

        double determinant() {
            return w * wxx - wx * wx;
        }
    }

    LeaveOneOutLaw(PiecewiseLaw law, List<FitPoint> points) {
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
        Map<String, Integer> place = new HashMap<>();
        List<Sums> own = new ArrayList<>();
        for (FitPoint each : mine) {
            Sums sums = Sums.of(
                    weight(full, each),
                    StrictMath.log(each.pressure() / full.referencePressure()),
                    StrictMath.log(each.rate() / full.rate(each.pressure())));
            Integer known = place.putIfAbsent(each.cluster(), own.size());
            if (known == null) {
                own.add(sums);
            } else {
                own.set(known, own.get(known).plus(sums));
            }
        }
        List<Sums> before = running(own);
        List<Sums> backward = new ArrayList<>(own);
        Collections.reverse(backward);
        List<Sums> after = running(backward);
        Collections.reverse(after);
        return new Piece(place, own, before, after);
    }

    private static List<Sums> running(List<Sums> each) {
        List<Sums> running = new ArrayList<>(List.of(Sums.NONE));
        each.forEach(sums -> running.add(running.get(running.size() - 1).plus(sums)));
        return running;
    }

    /** Empty where too little is left to make a law of. */
    Optional<PiecewiseLaw> without(String firing) {
        PiecewiseLaw changed = law;
        for (int piece = 0; piece < pieces.size(); piece++) {
            Integer cluster = pieces.get(piece).place().get(firing);
            if (cluster != null) {
                Optional<RateLaw> left = without(law.laws().get(piece), pieces.get(piece), cluster);
                if (left.isEmpty()) {
                    return Optional.empty();
                }
                changed = changed.with(piece, left.orElseThrow());
            }
        }
        return Optional.of(changed);
    }

    private static Optional<RateLaw> without(RateLaw full, Piece mine, int cluster) {
        Sums all = mine.all();
        Sums own = mine.own().get(cluster);
        Sums rest = mine.without(cluster);
        double determinant = rest.determinant();
        if (!(rest.w() > 0 && determinant / rest.w() > LEAST_SHARE * (all.wxx() - all.wx() * all.wx() / all.w()))) {
            return Optional.empty();
        }
        return Optional.of(new RateLaw(
                full.lnRateAtReference() - (rest.wxx() * own.we() - rest.wx() * own.wxe()) / determinant,
                full.exponent() - (rest.w() * own.wxe() - rest.wx() * own.we()) / determinant,
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
        double ofRate = full.weighting().estimatesScale() && !point.lessCertain()
                ? full.scatterAt(point.pressure())
                : point.aboutLawStd(
                        full.exponent(),
                        full.scatterAt(point.pressure()),
                        full.weighting().estimatesScale());
        double ofPressure = point.lessCertain() ? 0 : full.exponent() * point.pressureStd() / point.pressure();
        double variance = Math.max(LEAST_VARIANCE, ofRate * ofRate + ofPressure * ofPressure);
        return 1 / (variance * clusters.get(point.cluster()));
    }
}
