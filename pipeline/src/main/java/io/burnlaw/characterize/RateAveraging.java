package io.burnlaw.characterize;

import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.RateLawFit;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatePoint;
import java.util.List;
import java.util.Optional;

/**
 * The pressures that go with mean rates. A mean rate belongs to the power mean of the pressure with the exponent of the
 * law, which is only known from a fit to those pressures: so the two are found in turn, from the plain mean on.
 *
 * <p><b>Source.</b> DeLuca et al., RTO-MP-091 paper 35 (rate-averaged pressure). The dependence on the exponent is weak:
 * a change of 0.1 moves the mean of a trace from 4 to 8 MPa by 0.5 per mille, so that each turn wins about three digits.
 */
final class RateAveraging {

    private static final int TURNS = 20;
    private static final double CONVERGED = 1e-10;

    /** A steeper slope is that of a line across two laws, along which no error of a pressure runs [1]. */
    private static final double STEEP = 0.6;

    private RateAveraging() {}

    /**
     * Finds the exponent that belongs to the pressures that belong to it.
     *
     * @param options of the fit; its intervals are not made here
     * @return the exponent, or 1, that of the plain mean, where no law can be fitted
     */
    static double exponent(List<RatePoint> points, FitOptions options) {
        double exponent = 1;
        for (int turn = 0; turn < TURNS; turn++) {
            Optional<RateLaw> law = RateLawFit.law(at(points, exponent), options);
            if (law.isEmpty()) {
                return 1;
            }
            double next = law.get().exponent();
            if (Math.abs(next - exponent) < CONVERGED) {
                return next;
            }
            exponent = next;
        }
        return exponent;
    }

    /**
     * The points as a fit sees them.
     *
     * @param points   rates and their pressures
     * @param exponent of the power mean [1]
     * @return one for each, in order
     */
    static List<FitPoint> at(List<RatePoint> points, double exponent) {
        return points.stream()
                .map(point -> at(point, point.pressures().powerMean(exponent), exponent))
                .toList();
    }

    private static FitPoint at(RatePoint point, double pressure, double exponent) {
        PressureError error = point.pressureError();
        double systematic = point.rateSystematic() / point.rate();
        double own = Math.sqrt(Math.max(0, square(point.rateStd() / point.rate()) - square(systematic)));
        // Where the pressure follows from the rate, an error that all share moves both, and the law by what is across
        // it.
        double across = Math.abs(1 - Math.max(0, Math.min(exponent, STEEP)) * error.gain()) * systematic;
        return new FitPoint(
                point.id(),
                point.cluster(),
                pressure,
                error.ownStd() * pressure,
                point.rate(),
                Math.hypot(own, across) * point.rate(),
                across,
                error.sharedStd(),
                error.gain(),
                point.lessCertain());
    }

    private static double square(double x) {
        return x * x;
    }
}
