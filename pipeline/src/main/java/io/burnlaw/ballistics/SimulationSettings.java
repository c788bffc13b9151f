package io.burnlaw.ballistics;

/**
 * How a firing is simulated.
 *
 * @param ignition       how it begins
 * @param sampleInterval between the samples that come out [s]; 0 gives the integrator's own steps
 * @param timeLimit      after which it is given up [s]
 * @param tolerance      relative local error of one step [1]
 * @param disturbance    what goes wrong meanwhile
 */
public record SimulationSettings(
        Ignition ignition, double sampleInterval, double timeLimit, double tolerance, Disturbance disturbance) {

    public SimulationSettings {
        if (!(sampleInterval >= 0 && timeLimit > 0 && tolerance > 0)) {
            throw new IllegalArgumentException("no simulation: samples each " + sampleInterval + " s, limit "
                    + timeLimit + " s, tolerance " + tolerance);
        }
    }

    /**
     * Settings that serve predictions: the integrator's own steps, a limit of five minutes.
     *
     * @param ignition how the firing begins
     * @return the settings
     */
    public static SimulationSettings of(Ignition ignition) {
        return new SimulationSettings(ignition, 0, 300, 1e-6, Disturbance.none());
    }

    /**
     * The same settings with samples at an even interval.
     *
     * @param interval [s], above 0
     * @return the settings
     */
    public SimulationSettings sampledEach(double interval) {
        return new SimulationSettings(ignition, interval, timeLimit, tolerance, disturbance);
    }

    /**
     * The same settings with something that goes wrong.
     *
     * @param other what
     * @return the settings
     */
    public SimulationSettings disturbedBy(Disturbance other) {
        return new SimulationSettings(ignition, sampleInterval, timeLimit, tolerance, other);
    }

    /**
     * The same settings with another time limit.
     *
     * @param limit [s]
     * @return the settings
     */
    public SimulationSettings withTimeLimit(double limit) {
        return new SimulationSettings(ignition, sampleInterval, limit, tolerance, disturbance);
    }
}
