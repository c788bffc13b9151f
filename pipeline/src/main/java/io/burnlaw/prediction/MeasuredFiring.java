package io.burnlaw.prediction;

import io.burnlaw.ballistics.Motor;
import java.util.OptionalDouble;

/**
 * A firing as it was measured, and the motor that was fired.
 *
 * @param id                     of the firing; its points carry it as their cluster
 * @param motor                  as fired: its grain, throat before and after, chamber; density from its own mass where that is known;
 *                               c* pooled over all firings
 * @param rateFactor             rate at its own temperature over the rate at the law's [1]
 * @param characteristicVelocity its own c* [m/s], taken out of the pooled one when it is predicted; empty where it has
 *                               none
 * @param ignition               when its web began to burn [s, on the time axis of its trace]
 * @param maxPressure            [Pa, absolute]
 * @param meanPressure           over the burn time [Pa, absolute]
 * @param burnTime               [s]
 * @param ignitionSpike          of its ignition; see {@link IgnitionSpike} [N]
 */
public record MeasuredFiring(
        String id,
        Motor motor,
        double rateFactor,
        OptionalDouble characteristicVelocity,
        double ignition,
        double maxPressure,
        double meanPressure,
        double burnTime,
        OptionalDouble ignitionSpike) {

    public MeasuredFiring {
        if (!(maxPressure > 0 && meanPressure > 0 && burnTime > 0 && rateFactor > 0)) {
            throw new IllegalArgumentException("firing " + id + ": " + maxPressure + " Pa at most, " + meanPressure
                    + " Pa on average, for " + burnTime + " s, rate by " + rateFactor);
        }
    }
}
