package io.burnlaw.comparison;

import io.burnlaw.ratelaw.Interval;
import java.util.List;

/**
 * How the rate follows the fraction of an additive.
 *
 * @param additive     its name
 * @param baseline     id
 * @param formulations ids, by rising fraction, the baseline first
 * @param pressure     at which the trend is stated: the geometric mean of the points [Pa, absolute]
 * @param slope        change of ln rate per unit of mass fraction [1]
 * @param slopeStd     its standard uncertainty [1]
 * @param interval     of the slope [1]
 * @param trend        test of no trend
 * @param straight     test of the levels against the straight line; its numerator has the levels less two degrees
 * @param ownExponents whether every level was given an exponent of its own, since one for all does not hold
 * @param sentence     in words
 */
public record DoseTrend(
        String additive,
        String baseline,
        List<String> formulations,
        double pressure,
        double slope,
        double slopeStd,
        Interval.Estimated interval,
        FTest trend,
        FTest straight,
        boolean ownExponents,
        String sentence) {

    public DoseTrend {
        formulations = List.copyOf(formulations);
    }
}
