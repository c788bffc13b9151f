package io.burnlaw.ballistics;

import java.util.Arrays;

/** Samples of a firing while it is being simulated: at the integrator's steps, or at an even interval between them. */
final class FiringRecord {

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
        double area =
                open * motor.nozzle().throatArea(Math.min(1, web / motor.grain().burnout()));
        columns[0][size] = time;
        columns[1][size] = pressure;
        columns[2][size] = web;
        columns[3][size] = coefficient.at(pressure, motor.ambientPressure()) * pressure * area;
        size++;
    }

    SimulatedFiring finish(
            SimulatedFiring.Outcome outcome, double first, double mean, double last, double maximum, double expelled) {
        double[][] cut = new double[columns.length][];
        for (int i = 0; i < columns.length; i++) {
            cut[i] = Arrays.copyOf(columns[i], size);
        }
        return new SimulatedFiring(outcome, cut, first, mean, last, maximum, expelled);
    }
}
