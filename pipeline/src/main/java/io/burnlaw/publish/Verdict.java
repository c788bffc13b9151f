package io.burnlaw.publish;

import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
     * @param level  of the intervals [1]
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
        return Stream.concat(Stream.of(laws), doubts(result)).collect(Collectors.joining(" "));
    }

    /**
     * What to mind when a law of the formulation is used, without repeating any formula: below what it burns slowly, where
     * one formula ends and the next begins, what one law cannot say.
     *
     * @return one sentence or a few; empty where there is nothing
     */
    static Optional<String> caution(FormulationResult result) {
        List<Break> breaks = result.regimes().map(Regimes::breaks).orElse(List.of());
        Optional<String> law = result.threshold()
                .map(Verdict::slow)
                .or(() -> Optional.of(breaks)
                        .filter(found -> !found.isEmpty())
                        .map(found -> "The law changes at "
                                + found.stream()
                                        .map(each -> megapascals(each.pressure(), 3))
                                        .collect(Collectors.joining(" and "))
                                + NO_BREAK + "MPa: use each formula in its own range only."));
        return Stream.concat(law.stream(), doubts(result)).reduce((one, next) -> one + " " + next);
    }

    private static String slow(Threshold threshold) {
        double safe = threshold.interval().estimated().map(each -> each.high()).orElse(threshold.gapHigh());
        return "Stay above " + megapascals(safe, 3) + NO_BREAK + "MPa: below, it may burn "
                + NumberFormat.significant(threshold.rateRatio(), 2) + " times slower.";
    }

    private static Stream<String> doubts(FormulationResult result) {
        Claim claim = result.regimes().map(Regimes::claim).orElse(Claim.SINGLE_LAW);
        boolean open = claim != Claim.BREAK
                && result.regimes().filter(found -> found.selected() > 1).isPresent();
        return Stream.of(
                        Optional.of("Whether the exponent changes at a break or smoothly is open.")
                                .filter(any -> open),
                        Optional.of("Its exponent changes smoothly with pressure: one law is only its mean.")
                                .filter(any -> claim == Claim.SMOOTH_CURVE),
                        result.regimes().flatMap(Regimes::unsettled).map(Verdict::unsettled))
                .flatMap(Optional::stream);
    }

    /** A law over the whole range would be quoted against the evidence: each regime speaks for itself. */
    private static String regimes(Regimes found, FormulationResult result, double level) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < found.selected(); i++) {
            Regime regime = found.regimes().get(i);
            words.append(range(found.breaks(), i))
                    .append(NO_BREAK + "MPa: ")
                    .append(formula(regime.law()))
                    .append(word(regime))
                    .append(". ");
        }
        long points = result.points().stream()
                .filter(each -> each.segment().isPresent())
                .count();
        return words.append("r in mm/s, P in MPa absolute. The law changes at ")
                .append(found.breaks().stream()
                        .map(each -> megapascals(each.pressure(), each.interval(), level))
                        .collect(Collectors.joining(" and at ")))
                .append(". Measured from ")
                .append(megapascals(found.regimes().get(0).low(), 2))
                .append(" to ")
                .append(megapascals(found.regimes().get(found.selected() - 1).high(), 2))
                .append(NO_BREAK + "MPa, with ")
                .append(points)
                .append(" points.")
                .toString();
    }

    private static String range(List<Break> breaks, int regime) {
        String low = regime == 0 ? "" : at(breaks.get(regime - 1));
        String high = regime == breaks.size() ? "" : at(breaks.get(regime));
        return low.isEmpty() ? "Below " + high : high.isEmpty() ? "Above " + low : "From " + low + " to " + high;
    }

    /** As many digits as the interval allows. */
    private static String at(Break found) {
        return shown(found.pressure(), found.interval(), Unit.MEGAPASCAL).replaceFirst(" \\(.*", "");
    }

    private static String megapascals(double pascals, Interval interval, double level) {
        return withLevel(shown(pascals, interval, Unit.MEGAPASCAL), NO_BREAK + "MPa", level);
    }

    /** Such as {@code 5.56 mm/s (95 %: 5.44 to 5.68)}. */
    private static String withLevel(String shown, String unit, double level) {
        return shown.contains("(") ? shown.replaceFirst(" \\(", unit + " (" + percent(level) + ": ") : shown + unit;
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
        return word.isEmpty() ? "" : regime.settled() ? ", " + word : ", by the best estimate " + word;
    }

    private static String unsettled(UnsettledRegime found) {
        boolean one = found.ids().size() == 1;
        return (one ? "One point" : found.ids().size() + " points") + " at "
                + (one
                        ? megapascals(found.pressureLow(), 2)
                        : megapascals(found.pressureLow(), 2) + " to " + megapascals(found.pressureHigh(), 2))
                + NO_BREAK + "MPa " + (one ? "burns " : "burn ") + NumberFormat.significant(found.rateRatio(), 2)
                + " times "
                + (found.side() == UnsettledRegime.Side.BELOW ? "slower" : "faster")
                + " than that law: probably another regime.";
    }

    private static String law(FitResult.Fitted fitted, double level) {
        MethodIntervals intervals = fitted.publishedIntervals();
        return law(fitted.law(), intervals.rateAtReference(), intervals.exponent(), level);
    }

    private static String law(RateLaw law, Interval rateAtReference, Interval ofExponent, double level) {
        String exponent = ofExponent
                .estimated()
                .map(e -> " n = " + withLevel(shown(law.exponent(), ofExponent, Unit.ONE), "", level) + ".")
                .orElse("");
        return formula(law) + " (r in mm/s, P in MPa absolute). Measured from " + megapascals(law.pressureLow(), 2)
                + " to " + megapascals(law.pressureHigh(), 2) + NO_BREAK + "MPa, with " + law.points() + " points. At "
                + megapascals(law.referencePressure(), 2) + NO_BREAK + "MPa: "
                + withLevel(
                        shown(law.rateAtReference(), rateAtReference, Unit.MILLIMETRE_PER_SECOND),
                        NO_BREAK + "mm/s",
                        level)
                + "." + exponent;
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

    private static String megapascals(double pascals, int digits) {
        return NumberFormat.significant(Unit.MEGAPASCAL.fromSi(pascals), digits);
    }
}
