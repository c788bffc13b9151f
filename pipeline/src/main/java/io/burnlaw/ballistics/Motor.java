package io.burnlaw.ballistics;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.grain.Grain;

/**
 * A motor ready to be fired.
 *
 * @param density         of the propellant [kg/m3]
 * @param freeVolume      of the chamber around the new grain, port included [m3]
 * @param ambientPressure [Pa, absolute]
 */
public record Motor(Grain grain, double density, Gas gas, Nozzle nozzle, double freeVolume, double ambientPressure) {

    /**
     * How much longer and wider than the grain a chamber is, where nobody measured it: its volume is this times the
     * cylinder around the grain. Common practice, no source; the pressure integral does not depend on it.
     */
    public static final double USUAL_CHAMBER_OVER_GRAIN = 1.1;

    public Motor {
        if (!(density > 0 && freeVolume > 0 && ambientPressure >= 0)) {
            throw new IllegalArgumentException("no motor: density " + density + " kg/m3, free volume " + freeVolume
                    + " m3, ambient pressure " + ambientPressure + " Pa");
        }
    }

    /**
     * Free volume around a new grain.
     *
     * @param chamberVolume of the empty case [m3]; where it does not fit the grain, or is not a number, the usual chamber
     *                      around such a grain is taken
     * @return [m3]
     */
    public static double freeVolume(Grain grain, double chamberVolume) {
        double propellant = grain.volume(0);
        return (fits(grain, chamberVolume) ? chamberVolume : USUAL_CHAMBER_OVER_GRAIN * around(grain)) - propellant;
    }

    /**
     * Whether a chamber can be the one of a grain: larger than its propellant, and no more than twenty times the cylinder
     * around it.
     *
     * @param chamberVolume of the empty case [m3]
     * @return whether it can be
     */
    public static boolean fits(Grain grain, double chamberVolume) {
        return chamberVolume > grain.volume(0) && chamberVolume <= Plausible.CHAMBER_OVER_GRAIN.high() * around(grain);
    }

    private static double around(Grain grain) {
        // a table says nothing of its port: half as much room as propellant
        return grain.envelope().orElse(grain.volume(0) * 1.5 / USUAL_CHAMBER_OVER_GRAIN);
    }

    /** The same motor with another nozzle. */
    public Motor withNozzle(Nozzle other) {
        return new Motor(grain, density, gas, other, freeVolume, ambientPressure);
    }
}
