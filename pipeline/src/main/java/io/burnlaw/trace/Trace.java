package io.burnlaw.trace;

import java.util.Optional;

/**
 * The record of one firing in SI: pressure over time, thrust over time, or both. Immutable; the findings list what was
 * done to it after it was read.
 */
public final class Trace {

    private final String firing;
    private final double[] time;
    private final Optional<double[]> pressure;
    private final Optional<double[]> thrust;

    private Trace(String firing, double[] time, Optional<double[]> pressure, Optional<double[]> thrust) {
        this.firing = firing;
        this.time = time;
        this.pressure = pressure;
        this.thrust = thrust;
        if (pressure.isEmpty() && thrust.isEmpty()) {
            throw new IllegalArgumentException("the trace of " + firing + " has neither pressure nor thrust");
        }
        if (pressure.isPresent() && pressure.get().length != time.length
                || thrust.isPresent() && thrust.get().length != time.length) {
            throw new IllegalArgumentException("the columns of the trace of " + firing + " differ in length");
        }
    }

    /**
     * Makes a trace; the arrays are copied.
     *
     * @param time     [s], rising
     * @param pressure [Pa, absolute], as long as time; empty where only thrust was recorded
     * @param thrust   [N], as long as time; empty where only pressure was recorded
     * @throws IllegalArgumentException if both are missing or the lengths differ
     */
    public static Trace of(String firing, double[] time, Optional<double[]> pressure, Optional<double[]> thrust) {
        return new Trace(firing, time.clone(), pressure.map(double[]::clone), thrust.map(double[]::clone));
    }

    /** As {@link #of}, but the arrays are handed over: nobody else may hold them. */
    public static Trace owning(String firing, double[] time, Optional<double[]> pressure, Optional<double[]> thrust) {
        return new Trace(firing, time, pressure, thrust);
    }

    /** {@return id of the firing} */
    public String firing() {
        return firing;
    }

    /** The times themselves: to be read only. */
    public double[] timeArray() {
        return time;
    }

    /** {@return number of samples} */
    public int size() {
        return time.length;
    }

    /**
     * Time of a sample.
     *
     * @param i from 0
     * @return [s]
     */
    public double time(int i) {
        return time[i];
    }

    /** {@return whether pressure was recorded, or derived} */
    public boolean hasPressure() {
        return pressure.isPresent();
    }

    /** {@return whether thrust was recorded} */
    public boolean hasThrust() {
        return thrust.isPresent();
    }

    /**
     * Pressure of a sample.
     *
     * @param i from 0
     * @return [Pa, absolute]
     * @throws java.util.NoSuchElementException if there is no pressure
     */
    public double pressure(int i) {
        return pressure.orElseThrow()[i];
    }

    /**
     * Thrust of a sample.
     *
     * @param i from 0
     * @return [N]
     * @throws java.util.NoSuchElementException if there is no thrust
     */
    public double thrust(int i) {
        return thrust.orElseThrow()[i];
    }

    /** {@return a copy of the times [s]} */
    public double[] times() {
        return time.clone();
    }

    /** {@return a copy of the pressures [Pa, absolute]} */
    public double[] pressures() {
        return pressure.orElseThrow().clone();
    }

    /** {@return a copy of the thrusts [N]} */
    public double[] thrusts() {
        return thrust.orElseThrow().clone();
    }

    /**
     * The same record with other pressures.
     *
     * @param other [Pa, absolute], as long as the record
     */
    public Trace withPressure(double[] other) {
        return new Trace(firing, time, Optional.of(other.clone()), thrust);
    }
}
