package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;

/**
 * A pressure at which the law changes.
 *
 * @param pressure          [Pa, absolute]
 * @param interval          of the pressure, from the profile of the sum of squares [Pa, absolute]
 * @param kind              what changes
 * @param rateRatio         rate just above over rate just below [1]; 1 where only the slope changes
 * @param rateRatioInterval of that ratio
 * @param exponentBelow     [1]
 * @param exponentAbove     [1]
 */
public record Break(
        double pressure,
        Interval interval,
        Kind kind,
        double rateRatio,
        Interval rateRatioInterval,
        double exponentBelow,
        double exponentAbove) {

    /** What changes at a break. */
    public enum Kind {
        /** The exponent only. */
        SLOPE,
        /** The rate itself. */
        JUMP
    }
}
