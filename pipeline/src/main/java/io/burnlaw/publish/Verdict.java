package io.burnlaw.publish;

import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Regime;
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
                : result.fit()
                        .match(
                                fitted -> result.batchLaw()
                                        .map(batches -> law(
                                                batches.law(),
                                                batches.law()
                                                        .interval(batches.law().referencePressure(), level),
                                                batches.exponent(),
                                                level))
                                        .orElseGet(() -> law(fitted, level)),
                                none -> "No law: " + none.reason());
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
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < found.selected(); i++) {
            Regime regime = found.regimes().get(i);
            if (i > 0) {
                double at = found.breaks().get(i - 1).pressure();
                Interval interval = found.breaks().get(i - 1).interval();
                words.append(i == 1 && found.selected() == 2 ? " Above: " : " Above ")
                        .append(
                                i == 1 && found.selected() == 2
                                        ? ""
                                        : shown(at, interval, Unit.MEGAPASCAL) + NO_BREAK + "MPa: ");
            } else {
                words.append("Below ")
                        .append(shown(
                                found.breaks().get(0).pressure(),
                                found.breaks().get(0).interval(),
                                Unit.MEGAPASCAL))
                        .append(NO_BREAK + "MPa: ");
            }
            words.append(formula(regime.law())).append(word(regime)).append('.');
        }
        long points = result.points().stream()
                .filter(each -> each.segment().isPresent())
                .count();
        return words.append(" Rates in mm/s, pressures in MPa absolute; measured from ")
                .append(megapascals(found.regimes().get(0).low(), 2))
                .append(" to ")
                .append(megapascals(found.regimes().get(found.selected() - 1).high(), 2))
                .append(NO_BREAK + "MPa with ")
                .append(points)
                .append(" points; in brackets ")
                .append(percent(level))
                .append(" intervals.")
                .append(
                        found.claim() == Claim.BREAK
                                ? ""
                                : " Whether the exponent changes at a break or smoothly is open.")
                .toString();
    }

    /** The law as people write it, with as many digits as give it back. */
    private static String formula(RateLaw law) {
        return "r = " + NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(law.coefficient()), 4) + NO_BREAK
                + "·" + NO_BREAK + "P^" + NumberFormat.significant(law.exponent(), 3);
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
        MethodIntervals intervals = fitted.publishedIntervals();
        return law(fitted.law(), intervals.rateAtReference(), intervals.exponent(), level);
    }

    private static String law(RateLaw law, Interval rateAtReference, Interval ofExponent, double level) {
        String exponent = ofExponent
                .estimated()
                .map(e -> "; n: " + shown(law.exponent(), ofExponent, Unit.ONE))
                .orElse("");
        return formula(law) + " (mm/s, MPa absolute), measured from " + megapascals(law.pressureLow(), 2) + " to "
                + megapascals(law.pressureHigh(), 2) + NO_BREAK + "MPa with " + law.points() + " points. At "
                + megapascals(law.referencePressure(), 2) + NO_BREAK + "MPa: "
                + shown(law.rateAtReference(), rateAtReference, Unit.MILLIMETRE_PER_SECOND) + NO_BREAK
                + "mm/s"
                + exponent
                + (exponent.isEmpty() ? "." : " (in brackets: " + percent(level) + " intervals).");
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
