package io.burnlaw.ballistics;

/**
 * The ignition of a motor: the igniter's gas, and a flame that spreads over the surface, at once or after a dwell on a
 * small part of it.
 *
 * @param igniterMass     gas that the igniter gives [kg]
 * @param igniterDuration in which it gives it, most at the start and then evenly less [s]
 * @param spreadTime      in which the flame runs over the surface [s]
 * @param dwellTime       for which only a part of the surface burns before [s]; 0 for none
 * @param dwellShare      that part [1]
 * @param ahead           whether that part burns deeper than the rest from then on; else the web counts as its mean
 */
public record Ignition(
        double igniterMass,
        double igniterDuration,
        double spreadTime,
        double dwellTime,
        double dwellShare,
        boolean ahead) {

    public Ignition {
        if (!(igniterMass >= 0 && igniterDuration > 0 && spreadTime >= 0 && dwellTime >= 0)
                || !(dwellShare >= 0 && dwellShare <= 1)) {
            throw new IllegalArgumentException("no ignition: " + igniterMass + " kg in " + igniterDuration
                    + " s, spread in " + spreadTime + " s after " + dwellTime + " s on " + dwellShare);
        }
    }

    /** An ignition whose dwell, if there is one, leaves the web even; the components are those of the record. */
    public Ignition(
            double igniterMass, double igniterDuration, double spreadTime, double dwellTime, double dwellShare) {
        this(igniterMass, igniterDuration, spreadTime, dwellTime, dwellShare, false);
    }

    /** A usual small igniter, scaled to the motor: in a closed chamber its gas would raise the pressure by 0.3 MPa. */
    public static Ignition usual(Motor motor) {
        return new Ignition(0.3e6 * motor.freeVolume() / motor.gas().specificEnergy(), 0.02, 0.02, 0, 0);
    }

    /**
     * The same ignition with a dwell before the flame spreads.
     *
     * @param time  of the dwell [s]
     * @param share of the surface that burns in it [1]
     */
    public Ignition withDwell(double time, double share) {
        return new Ignition(igniterMass, igniterDuration, spreadTime, time, share);
    }

    /**
     * The same ignition, but a part of the surface burns for itself before the rest takes fire, and stays ahead of it.
     *
     * @param time  for which it burns for itself [s]
     * @param share of the surface [1]; 0 where nothing burns until then
     */
    public Ignition withPartAhead(double time, double share) {
        return new Ignition(igniterMass, igniterDuration, spreadTime, time, share, true);
    }

    /** Mass flow of the igniter [kg/s] at a time since it was lit [s]. */
    double igniterFlow(double time) {
        // what was left of the igniter lights the rest of the surface
        return pulse(time) + (ahead && time >= dwellTime ? pulse(time - dwellTime) : 0);
    }

    private double pulse(double time) {
        return time < igniterDuration ? 2 * igniterMass / igniterDuration * (1 - time / igniterDuration) : 0;
    }

    /** Share of the surface that burns [1] at a time since the igniter was lit [s]. */
    double lit(double time) {
        if (ahead) {
            // the grain itself knows which part burns: here only the flame that runs over it
            return time < dwellTime ? (dwellShare > 0 ? spread(time) : 0) : 1;
        }
        if (dwellTime <= 0) {
            return spread(time);
        }
        return dwellShare * spread(time) + (1 - dwellShare) * spread(time - dwellTime);
    }

    private double spread(double time) {
        if (time >= spreadTime) {
            return 1;
        }
        double share = Math.max(0, time / spreadTime);
        return share * share * (3 - 2 * share);
    }
}
