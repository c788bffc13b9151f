package io.burnlaw.planning;

import io.burnlaw.planning.PlannedThroat.Drill;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * How a plan is made.
 *
 * @param level             of the prediction intervals [1]
 * @param rungs             throats of the ladder, at least 2
 * @param reach             how far beyond the pressures fired a firing may be proposed, as a factor [1], at least 1
 * @param exponentHalfWidth to which the exponent is wanted at 95 % [1]
 * @param ladder            mean pressures that the ladder shall span, as far as they are allowed; empty for all that are
 * @param goal              what the next firing shall sharpen
 * @param series            drills that are at hand
 */
public record PlanOptions(
        double level,
        int rungs,
        double reach,
        double exponentHalfWidth,
        Optional<PressureRange> ladder,
        Goal goal,
        Set<Drill.Series> series) {

    /** Least level of a prediction that is held against a limit [1]. */
    private static final double LEAST_LEVEL = 0.90;

    /** What the next firing should narrow. */
    public enum Goal {
        /** The break where there is one, otherwise the exponent. */
        WHAT_IS_LESS_SURE,
        /** The exponent. */
        EXPONENT,
        /** The pressure at which the law changes. */
        BREAK
    }

    public PlanOptions {
        series = Set.copyOf(series);
        if (!(level > 0.5 && level < 1 && reach >= 1 && exponentHalfWidth > 0) || rungs < 2 || series.isEmpty()) {
            throw new IllegalArgumentException(
                    "level " + level + ", " + rungs + " rungs, reach " + reach + ", drills " + series);
        }
    }

    /** {@return 95 %, five throats, half as far again as fired, the exponent to 0.02, all drills} */
    public static PlanOptions defaults() {
        return new PlanOptions(
                0.95, 5, 1.5, 0.02, Optional.empty(), Goal.WHAT_IS_LESS_SURE, EnumSet.allOf(Drill.Series.class));
    }

    /** The same for another goal. */
    public PlanOptions with(Goal other) {
        return new PlanOptions(level, rungs, reach, exponentHalfWidth, ladder, other, series);
    }

    /**
     * The same with other drills.
     *
     * @param other the series at hand
     */
    public PlanOptions with(Set<Drill.Series> other) {
        return new PlanOptions(level, rungs, reach, exponentHalfWidth, ladder, goal, other);
    }

    /**
     * The same with another number of throats in the ladder.
     *
     * @param other at least 2
     */
    public PlanOptions withRungs(int other) {
        return new PlanOptions(level, other, reach, exponentHalfWidth, ladder, goal, series);
    }

    /**
     * The same with predictions of another level.
     *
     * @param other level [1]
     */
    public PlanOptions withLevel(double other) {
        return new PlanOptions(other, rungs, reach, exponentHalfWidth, ladder, goal, series);
    }

    /**
     * The same with the level that a campaign states, but not below 90 %: a limit is not planned against with less.
     *
     * @param stated level [1]
     */
    public PlanOptions withLevelOf(double stated) {
        return withLevel(Math.max(LEAST_LEVEL, stated));
    }

    /**
     * The same with a ladder over other pressures.
     *
     * @param other mean pressures to span
     */
    public PlanOptions withLadder(PressureRange other) {
        return new PlanOptions(level, rungs, reach, exponentHalfWidth, Optional.of(other), goal, series);
    }
}
