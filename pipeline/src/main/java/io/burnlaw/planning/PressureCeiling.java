package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Between which pressures a motor may be planned: above the slow regime, below what the case allows, and only where the
 * exponent lies below 1 with confidence.
 *
 * @param floor  lowest [Pa, absolute]
 * @param limit  highest [Pa, absolute]; not above it if floor is above
 * @param reason what sets the limit, in words
 */
record PressureCeiling(double floor, double limit, String reason) {

    /** What stands against planning at all, or the range. */
    sealed interface Outcome {
        /** A range. */
        record Range(PressureCeiling ceiling) implements Outcome {}

        /** None. */
        record None(OptionalDouble allowed, String reason) implements Outcome {}

        /** Answers for both cases. */
        default <T> T match(Function<PressureCeiling, T> range, Function<None, T> none) {
            return this instanceof Range r ? range.apply(r.ceiling()) : none.apply((None) this);
        }
    }

    static Outcome of(PlanBasis basis, double level) {
        PressureLimit stated = PressureLimit.of(basis.hardware(), basis.motor().ambientPressure());
        OptionalDouble ofCase = stated.allowed();
        if (ofCase.isEmpty() && basis.highestFired().isEmpty()) {
            return new Outcome.None(
                    OptionalDouble.empty(),
                    "No throat is named: no pressure limit of the case is stated, and nothing was fired yet. State the limit of the case.");
        }
        for (RateLaw each : basis.law().laws()) {
            if (each.exponentInterval(level) instanceof Interval.NotEstimable missing) {
                return new Outcome.None(
                        ofCase,
                        "No throat is named: the law has no uncertainty, so it cannot predict; " + missing.reason()
                                + ".");
            }
        }
        double limit = stated.ceiling(basis.highestFired().orElse(0));
        String reason = ofCase.isPresent()
                ? caseInWords(basis)
                : "the highest pressure fired so far; no limit of the case is stated";
        if (basis.fastAbove().orElse(Double.POSITIVE_INFINITY) < limit) {
            limit = basis.fastAbove().getAsDouble();
            reason = "above which some points burn faster than the law, too few for a law of their own";
        }
        return withinStable(basis, level, limit, reason, ofCase);
    }

    private static String caseInWords(PlanBasis basis) {
        return "the case limit of %s MPa over a safety factor of %s"
                .formatted(
                        megapascal(basis.hardware().casePressureLimit().getAsDouble()),
                        NumberFormat.significant(basis.hardware().safetyFactor(), 2));
    }

    /** The highest run of laws with exponents below 1 under the limit. */
    private static Outcome withinStable(
            PlanBasis basis, double level, double limit, String reason, OptionalDouble ofCase) {
        PiecewiseLaw law = basis.law();
        int top = law.indexAt(limit);
        while (top >= 0 && !stable(law.laws().get(top), level)) {
            top--;
        }
        if (top < 0) {
            return new Outcome.None(ofCase, unstable(law.laws().get(law.indexAt(limit)), level));
        }
        int bottom = top;
        while (bottom > 0 && stable(law.laws().get(bottom - 1), level)) {
            bottom--;
        }
        double floor = Math.max(
                bottom > 0 ? law.breaks().get(bottom - 1) : 0, basis.slowBelow().orElse(0));
        boolean cut = top < law.indexAt(limit);
        return new Outcome.Range(new PressureCeiling(
                floor,
                cut ? law.breaks().get(top) : limit,
                cut ? "the break above which the exponent reaches 1" : reason));
    }

    private static boolean stable(RateLaw law, double level) {
        return law.exponentInterval(level)
                .estimated()
                .map(each -> law.exponent() < 1 && each.high() < 1)
                .orElse(false);
    }

    private static String unstable(RateLaw law, double level) {
        Interval.Estimated interval = law.exponentInterval(level).estimated().orElseThrow();
        String exponent = NumberFormat.withInterval(law.exponent(), interval.low(), interval.high());
        return law.exponent() >= 1
                ? "No throat is named: the exponent is %s. At 1 or above no motor has a steady pressure: a small rise grows until the case bursts."
                        .formatted(exponent)
                : "No throat is named: the exponent is %s, and its interval reaches 1. There no motor has a steady pressure, and the pressure has no upper limit. Burn more strands or fire more over a wider range of low pressures."
                        .formatted(exponent);
    }
}
