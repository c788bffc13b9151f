package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The pressure below which the propellant burns slowly.
 *
 * @param pressure     best estimate [Pa, absolute]; the geometric middle of the gap where only the gap is known
 * @param interval     of the pressure; not estimable where only the gap is known
 * @param gapLow       highest pressure of a slow point [Pa, absolute]
 * @param gapHigh      lowest pressure of a fast point [Pa, absolute]
 * @param rateRatio    fast over slow rate across it [1]
 * @param below        ids of the slow points
 * @param above        ids of the fast points
 * @param stayRatio    smallest ratio of burning surface to throat area at which a motor that burns fast stays above
 *                     the threshold [1]; empty without density and c*
 * @param climbRatio   ratio at which a motor that starts slow comes up through the threshold by itself [1]; empty
 *                     without density and c*, or where the slow side has no law
 * @param sentence     what it means for the owner of the motor
 */
public record Threshold(
        double pressure,
        Interval interval,
        double gapLow,
        double gapHigh,
        double rateRatio,
        List<String> below,
        List<String> above,
        OptionalDouble stayRatio,
        OptionalDouble climbRatio,
        String sentence) {

    public Threshold {
        below = List.copyOf(below);
        above = List.copyOf(above);
    }
}
