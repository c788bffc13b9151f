package io.burnlaw.reduction;

import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.List;
import java.util.Optional;

/**
 * A change of the throat that the course of the rates shows: the rate drifts away from its own law evenly with the web.
 *
 * <pre>
 *     area = exp(-b) - 1          b: change of ln r over the whole web at one pressure     [1]
 * </pre>
 * since a throat that grew passes more gas than was assumed. Told only where the even drift describes the burn better
 * than a start that dies away and than a law that is curved.
 *
 * @param area by which share the throat area changed from begin to end, beyond what was measured [1]
 * @param std  standard uncertainty of it [1]
 */
record ThroatChange(double area, double std) {

    /** Less cannot be distinguished from an inexact geometry [1]. */
    private static final double LEAST = 0.02;

    /** Significance, in standard uncertainties. */
    private static final double STDS = 4;

    /** Before this share of the web the start may have its own trouble [1]. */
    private static final double FROM = 0.15;

    static Optional<ThroatChange> of(List<InstantaneousRate> along, double web) {
        List<InstantaneousRate> later =
                along.stream().filter(at -> at.web() > FROM * web).toList();
        BurnTrend even = BurnTrend.of(later, at -> at.web() / web);
        double area = Math.expm1(-even.shift());
        if (!(Math.abs(area) > LEAST) || !(Math.abs(even.shift()) > STDS * even.shiftStd())) {
            return Optional.empty();
        }
        double residual = BurnTrend.of(along, at -> at.web() / web).residual();
        double curved = BurnTrend.of(along, at -> square(StrictMath.log(at.pressure() / 1e6)))
                .residual();
        boolean best = residual < ErosiveHump.residual(along, web) && residual < curved;
        return best ? Optional.of(new ThroatChange(area, even.shiftStd())) : Optional.empty();
    }

    private static double square(double x) {
        return x * x;
    }
}
