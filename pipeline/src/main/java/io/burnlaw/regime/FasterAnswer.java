package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.OptionalDouble;

/**
 * What it takes to burn so many times faster.
 *
 * @param factor       k [1], above 1
 * @param basePressure where the propellant burns now [Pa, absolute]
 * @param baseRate     how fast [m/s]
 * @param pressure     that k needs [Pa, absolute]; empty where no allowed pressure gives it
 * @param interval     of that pressure
 * @param reach        what it takes
 * @param sentence     the answer in words, with numbers
 */
public record FasterAnswer(
        double factor,
        double basePressure,
        double baseRate,
        OptionalDouble pressure,
        Interval interval,
        Reach reach,
        String sentence) {

    /** What it takes. */
    public enum Reach {
        /** A higher pressure in the same regime, among the pressures that were fired. */
        SAME_REGIME,
        /** A higher pressure in another regime that was fired. */
        ANOTHER_REGIME,
        /** A pressure above all that were fired: the law would have to hold there. */
        EXTRAPOLATED,
        /** No pressure below the limit. */
        OUT_OF_REACH
    }
}
