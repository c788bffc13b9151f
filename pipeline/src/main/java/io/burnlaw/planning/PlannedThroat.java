package io.burnlaw.planning;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Predictions for a throat.
 *
 * @param diameter         [m]
 * @param drills           nearest of each series that is allowed, the nearest first
 * @param meanPressure     over the burn time [Pa, absolute]
 * @param maxPressure      over the whole burn [Pa, absolute]
 * @param burnTime         [s]
 * @param refusal          why it must not be drilled; empty where the upper prediction of the peak stays within what is
 *                         allowed
 * @param otherEquilibria  further stable pressures of the same motor [Pa, absolute]
 * @param exponentStdAfter standard uncertainty of the exponent with a firing there added [1]
 * @param remark           a remark, such as that it is outside of the pressures fired
 */
public record PlannedThroat(
        double diameter,
        List<Drill> drills,
        Predicted meanPressure,
        Predicted maxPressure,
        OptionalDouble burnTime,
        Optional<String> refusal,
        List<Double> otherEquilibria,
        OptionalDouble exponentStdAfter,
        Optional<String> remark) {

    public PlannedThroat {
        drills = List.copyOf(drills);
        otherEquilibria = List.copyOf(otherEquilibria);
    }

    /** {@return whether it stays within what the case allows} */
    public boolean allowed() {
        return refusal.isEmpty();
    }

    /**
     * A predicted value with its prediction interval for a single firing.
     *
     * @param high upper end; infinite where none can be stated
     */
    public record Predicted(double value, double low, double high) {}

    /**
     * A twist drill.
     *
     * @param diameter nominal [m]
     */
    public record Drill(Series series, String name, double diameter) {

        /** How twist drills are named. */
        public enum Series {
            /** Millimetres. */
            METRIC,
            /** Numbered gauge sizes. */
            NUMBER,
            /** Letter sizes. */
            LETTER,
            /** Fractions of an inch. */
            FRACTION
        }
    }

    /** The throat for a wanted pressure, or why none is named. */
    public sealed interface ThroatAnswer {

        /**
         * There is one.
         *
         * @param throat the drill nearest to it, with its predictions
         * @param exact  diameter that would give the pressure exactly [m]
         */
        record Found(PlannedThroat throat, double exact) implements ThroatAnswer {}

        /** None is named. */
        record None(String reason) implements ThroatAnswer {}

        /**
         * Answers for both cases.
         *
         * @param found the answer where there is a throat
         * @param none  the answer where there is none
         */
        default <T> T match(Function<Found, T> found, Function<None, T> none) {
            return this instanceof Found f ? found.apply(f) : none.apply((None) this);
        }
    }
}
