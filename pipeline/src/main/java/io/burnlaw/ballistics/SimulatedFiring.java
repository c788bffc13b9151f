package io.burnlaw.ballistics;

/** What a simulated motor did: pressure, web burned and thrust over time, from the igniter to the end. Immutable. */
public final class SimulatedFiring {

    /** How a simulated firing ended. */
    public enum Outcome {
        /** All propellant burned. */
        BURNED_OUT,
        /** The fire went out with web left. */
        WENT_OUT,
        /** It still burned when the time limit came. */
        STILL_BURNING
    }

    private final Outcome outcome;
    private final double[] time;
    private final double[] pressure;
    private final double[] web;
    private final double[] thrust;
    private final double firstBurnout;
    private final double meanBurnout;
    private final double lastBurnout;
    private final double maximumPressure;
    private final double expelledMass;

    SimulatedFiring(
            Outcome outcome,
            double[][] columns,
            double firstBurnout,
            double meanBurnout,
            double lastBurnout,
            double maximumPressure,
            double expelledMass) {
        this.outcome = outcome;
        this.time = columns[0];
        this.pressure = columns[1];
        this.web = columns[2];
        this.thrust = columns[3];
        this.firstBurnout = firstBurnout;
        this.meanBurnout = meanBurnout;
        this.lastBurnout = lastBurnout;
        this.maximumPressure = maximumPressure;
        this.expelledMass = expelledMass;
    }

    /** {@return how it ended} */
    public Outcome outcome() {
        return outcome;
    }

    /** {@return number of samples} */
    public int size() {
        return time.length;
    }

    /**
     * Time of a sample.
     *
     * @param i from 0
     * @return since the igniter was lit [s]
     */
    public double time(int i) {
        return time[i];
    }

    /**
     * Pressure of a sample.
     *
     * @param i from 0
     * @return [Pa, absolute]
     */
    public double pressure(int i) {
        return pressure[i];
    }

    /**
     * Web burned at a sample.
     *
     * @param i from 0
     * @return [m]
     */
    public double web(int i) {
        return web[i];
    }

    /**
     * Thrust at a sample.
     *
     * @param i from 0
     * @return of the ideal nozzle [N]
     */
    public double thrust(int i) {
        return thrust[i];
    }

    /** {@return a copy of the times [s]} */
    public double[] times() {
        return time.clone();
    }

    /** {@return a copy of the pressures [Pa, absolute]} */
    public double[] pressures() {
        return pressure.clone();
    }

    /** {@return a copy of the webs burned [m]} */
    public double[] webs() {
        return web.clone();
    }

    /** {@return a copy of the thrusts [N]} */
    public double[] thrusts() {
        return thrust.clone();
    }

    /** {@return when the web first burned through somewhere [s]; infinite where it did not} */
    public double firstBurnout() {
        return firstBurnout;
    }

    /** {@return when the web as the calipers give it was burned [s]; infinite where it was not} */
    public double meanBurnout() {
        return meanBurnout;
    }

    /** {@return when the last propellant was gone [s]; infinite where it was not} */
    public double lastBurnout() {
        return lastBurnout;
    }

    /** {@return the highest pressure, between samples too [Pa, absolute]} */
    public double maximumPressure() {
        return maximumPressure;
    }

    /** {@return gas that left through the nozzle [kg]} */
    public double expelledMass() {
        return expelledMass;
    }
}
