package io.burnlaw.publish;

import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.MethodIntervals;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Claim;
import io.burnlaw.regime.Regime;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.UnsettledRegime;
import java.util.Optional;

/**
 * The answer for one formulation in one sentence: what it burns at, where that changes, and how well that is known.
 * What it means for a motor, and how it was tested, have sentences of their own.
 */
final class Verdict {

    private static final String NO_BREAK = "\u00a0";

    private Verdict() {}

    /**
     * Rate and exponent with their intervals, range and count, by regime where there are several; or why there is no
     * law.
     *
     * @param result of the formulation
     * @param level  of the intervals [1]
     * @return one sentence
     */
    static String of(FormulationResult result, double level) {
        Optional<Regimes> several = result.regimes().filter(found -> found.selected() > 1);
        String laws = several.isPresent()
                ? regimes(several.get(), result, level)
                : result.fit().match(fitted -> law(fitted, level), none -> "No law: " + none.reason());
        boolean curved = result.regimes().map(Regimes::claim).orElse(Claim.SINGLE_LAW) == Claim.SMOOTH_CURVE;
        return laws
                + (curved ? " Its exponent changes smoothly with pressure: one law is only its mean." : "")
                + result.regimes()
                        .flatMap(Regimes::unsettled)
                        .map(Verdict::unsettled)
                        .orElse("");
    }

    /** A law over the whole range would be quoted against the evidence: each regime speaks for itself. */
    private static String regimes(Regimes found, FormulationResult result, double level) {
        StringBuilder words = new StringBuilder(
                found.claim() == Claim.BREAK
                        ? "Follows " + found.selected() + " laws: "
                        : "Follows no single law, and whether its exponent changes at a break or smoothly is open; described by "
                                + found.selected() + " laws: ");
        for (int i = 0; i < found.selected(); i++) {
            Regime regime = found.regimes().get(i);
            if (i == 0) {
                words.append("from ").append(megapascals(regime.low(), 2));
            } else {
                double at = found.breaks().get(i - 1).pressure();
                Interval interval = found.breaks().get(i - 1).interval();
                words.append("; above ").append(shown(at, interval, Unit.MEGAPASCAL));
            }
            words.append(NO_BREAK + "MPa ")
                    .append(i == 0 ? "an exponent of " : "one of ")
                    .append(shown(regime.law().exponent(), regime.exponentInterval(), Unit.ONE))
                    .append(word(regime))
                    .append(", ")
                    .append(millimetres(regime.law().rate(regime.low())))
                    .append(" to ")
                    .append(millimetres(regime.law().rate(regime.high())))
                    .append(NO_BREAK + "mm/s");
        }
        long points = result.points().stream()
                .filter(each -> each.segment().isPresent())
                .count();
        return words.append("; ")
                .append(points)
                .append(" points up to ")
                .append(megapascals(found.regimes().get(found.selected() - 1).high(), 2))
                .append(NO_BREAK + "MPa (in brackets: ")
                .append(percent(level))
                .append(" intervals).")
                .toString();
    }

    private static String word(Regime regime) {
        String word = switch (regime.kind()) {
            case ORDINARY -> "";
            case PLATEAU -> "a plateau";
            case MESA -> "a mesa";
            case UNSTABLE -> "no steady pressure in a motor";
            case SLOW_BURNING -> "slow burning";
        };
        return word.isEmpty() ? "" : regime.settled() ? ", " + word : ", at best estimate " + word;
    }

    private static String unsettled(UnsettledRegime found) {
        boolean one = found.ids().size() == 1;
        return " " + (one ? "One point" : found.ids().size() + " points") + " at "
                + (one
                        ? megapascals(found.pressureLow(), 2)
                        : megapascals(found.pressureLow(), 2) + " to " + megapascals(found.pressureHigh(), 2))
                + NO_BREAK + "MPa " + (one ? "burns " : "burn ") + NumberFormat.significant(found.rateRatio(), 2)
                + " times "
                + (found.side() == UnsettledRegime.Side.BELOW ? "slower" : "faster")
                + " than that law: in all likelihood another regime.";
    }

    private static String law(FitResult.Fitted fitted, double level) {
        RateLaw law = fitted.law();
        MethodIntervals intervals = fitted.publishedIntervals();
        return "Burns at " + shown(law.rateAtReference(), intervals.rateAtReference(), Unit.MILLIMETRE_PER_SECOND)
                + NO_BREAK + "mm/s at " + megapascals(law.referencePressure(), 2)
                + NO_BREAK + "MPa, with an exponent of "
                + shown(law.exponent(), intervals.exponent(), Unit.ONE)
                + (intervals.exponent().estimated().isPresent()
                        ? " (in brackets: " + percent(level) + " intervals)"
                        : "")
                + "; " + law.points() + " points from " + megapascals(law.pressureLow(), 2) + " to "
                + megapascals(law.pressureHigh(), 2) + NO_BREAK + "MPa.";
    }

    private static String percent(double level) {
        return NumberFormat.plain(100 * level, 4) + NO_BREAK + "%";
    }

    private static String shown(double si, Interval interval, Unit unit) {
        Optional<Interval.Estimated> estimated = interval.estimated();
        return estimated.isPresent()
                ? NumberFormat.withInterval(
                        unit.fromSi(si),
                        unit.fromSi(estimated.get().low()),
                        unit.fromSi(estimated.get().high()))
                : NumberFormat.significant(unit.fromSi(si), 2);
    }

    private static String millimetres(double metresPerSecond) {
        return NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(metresPerSecond), 3);
    }

    private static String megapascals(double pascals, int digits) {
        return NumberFormat.significant(Unit.MEGAPASCAL.fromSi(pascals), digits);
    }
}
