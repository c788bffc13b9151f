package io.burnlaw.ballistics;

import io.burnlaw.ballistics.SimulationSettings.Disturbance;
import java.util.Arrays;

/** Result of a simulated firing: pressure, web burned and thrust over time, from the igniter to the end. Immutable. */
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

    /**
     * Samples of a firing while it is being simulated: at the integrator's steps, or at an even interval between them.
     */
    static final class FiringRecord {

        private final Motor motor;
        private final double interval;
        private final Disturbance disturbance;
        private final ThrustCoefficient coefficient;
        private double[][] columns = new double[4][1024];
        private int size;

        FiringRecord(Motor motor, SimulationSettings settings) {
            this.motor = motor;
            this.interval = settings.sampleInterval();
            this.disturbance = settings.disturbance();
            this.coefficient = motor.nozzle().thrustCoefficient(motor.gas());
        }

        void start(double pressure) {
            add(0, pressure, 0);
        }

        /** Takes the samples of a step that was just tried and is good. */
        void take(DormandPrince solver, double[] state, double time, double step) {
            if (interval == 0) {
                add(time + step, solver.next[0], solver.next[1]);
                return;
            }
            for (double at = size * interval; at <= time + step; at = size * interval) {
                double share = (at - time) / step;
                add(at, solver.within(0, state, step, share), solver.within(1, state, step, share));
            }
        }

        private void add(double time, double pressure, double web) {
            if (size == columns[0].length) {
                for (int i = 0; i < columns.length; i++) {
                    columns[i] = Arrays.copyOf(columns[i], 2 * size);
                }
            }
            // a hole in the case adds no thrust that anybody could name
            double open = Math.min(1, disturbance.throatFactor().applyAsDouble(time));
            double area = open
                    * motor.nozzle().throatArea(Math.min(1, web / motor.grain().burnout()));
            columns[0][size] = time;
            columns[1][size] = pressure;
            columns[2][size] = web;
            columns[3][size] = coefficient.at(pressure, motor.ambientPressure()) * pressure * area;
            size++;
        }

        SimulatedFiring finish(
                SimulatedFiring.Outcome outcome,
                double first,
                double mean,
                double last,
                double maximum,
                double expelled) {
            double[][] cut = new double[columns.length][];
            for (int i = 0; i < columns.length; i++) {
                cut[i] = Arrays.copyOf(columns[i], size);
            }
            return new SimulatedFiring(outcome, cut, first, mean, last, maximum, expelled);
        }
    }
}
