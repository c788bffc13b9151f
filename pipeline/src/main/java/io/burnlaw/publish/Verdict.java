package io.burnlaw.publish;

import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.Figures;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.MethodIntervals;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regime;
import io.burnlaw.regime.Regimes;
import java.util.Optional;
import java.util.stream.Collectors;

/** The answer for one formulation, in words. */
final class Verdict {

    private Verdict() {}

    /**
     * Rate at the reference pressure and exponent with their intervals, range and count; or why there is no law.
     *
     * @param result of the formulation
     * @param level  of the intervals [1]
     * @return one or two sentences
     */
    static String of(FormulationResult result, double level) {
        String threshold =
                result.threshold().map(found -> " " + found.sentence()).orElse("");
        return result.regimes()
                        .filter(found -> found.selected() > 1)
                        .map(Verdict::regimes)
                        .orElseGet(() ->
                                result.fit().match(fitted -> law(fitted, level), none -> "No law: " + none.reason()))
                + threshold;
    }

    /** A law over the whole range would be quoted against the evidence: each regime speaks for itself. */
    private static String regimes(Regimes found) {
        return "Follows " + found.selected() + " laws. "
                + found.regimes().stream().map(Regime::sentence).collect(Collectors.joining(" "));
    }

    private static String law(FitResult.Fitted fitted, double level) {
        RateLaw law = fitted.law();
        MethodIntervals intervals = fitted.publishedIntervals();
        return "Burns at " + shown(law.rateAtReference(), intervals.rateAtReference(), Unit.MILLIMETRE_PER_SECOND)
                + " mm/s at " + megapascals(law.referencePressure(), 2) + " MPa, with an exponent of "
                + shown(law.exponent(), intervals.exponent(), Unit.ONE)
                + (intervals.exponent().estimated().isPresent()
                        ? " (in brackets: " + Figures.percent(level, 2).replace(' ', '\u00a0') + " intervals)"
                        : "")
                + "; from " + law.points() + " points between " + megapascals(law.pressureLow(), 2) + " and "
                + megapascals(law.pressureHigh(), 2) + " MPa.";
    }

    private static String shown(double si, Interval interval, Unit unit) {
        Optional<Interval.Estimated> estimated = interval.estimated();
        return estimated.isPresent()
                ? Figures.withInterval(
                        unit.fromSi(si),
                        unit.fromSi(estimated.get().low()),
                        unit.fromSi(estimated.get().high()))
                : Figures.significant(unit.fromSi(si), 2);
    }

    private static String megapascals(double pascals, int digits) {
        return Figures.significant(Unit.MEGAPASCAL.fromSi(pascals), digits);
    }
}
