package io.burnlaw.prediction;

import io.burnlaw.ballistics.ForwardSimulation;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.reduction.balance.RateEstimate;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * A simulated firing, described by the same figures as a measured one.
 *
 * @param ignition     when the web burned [s since the igniter]
 * @param maxPressure  of burn and ignition [Pa, absolute]
 * @param meanPressure over the burn time, by the trapezoidal rule [Pa, absolute]
 * @param burnTime     from ignition to the burnout of the mean web [s]
 */
public record Prediction(
        SimulatedFiring firing, double ignition, double maxPressure, double meanPressure, double burnTime) {

    /** Share of the highest gauge pressure at which the web is taken to burn, as the reductions have it by default. */
    private static final double IGNITION_SHARE = 0.10;

    /**
     * Fires a motor and measures it.
     *
     * @param rate rate [m/s] by absolute pressure [Pa]
     * @return the prediction; empty where the web did not burn out within the simulation's time
     */
    public static Optional<Prediction> of(Motor motor, DoubleUnaryOperator rate) {
        return of(motor, rate, 0);
    }

    /**
     * Fires a motor and measures it, with an ignition that stands above the burn.
     *
     * @param rate  rate [m/s] by absolute pressure [Pa]
     * @param spike of its ignition; see {@link IgnitionSpike} [N]
     * @return the prediction; empty where the web did not burn out within the simulation's time
     */
    public static Optional<Prediction> of(Motor motor, DoubleUnaryOperator rate, double spike) {
        SimulatedFiring firing = ForwardSimulation.run(motor, rate);
        double end = firing.meanBurnout();
        if (!Double.isFinite(end)) {
            return Optional.empty();
        }
        double level = motor.ambientPressure() + IGNITION_SHARE * (firing.maximumPressure() - motor.ambientPressure());
        double start = Double.NaN;
        double integral = 0;
        for (int i = 1; i < firing.size() && firing.time(i - 1) < end; i++) {
            double t0 = firing.time(i - 1);
            double t1 = Math.min(firing.time(i), end);
            double p0 = firing.pressure(i - 1);
            double slope = (firing.pressure(i) - p0) / (firing.time(i) - t0);
            if (Double.isNaN(start)) {
                if (firing.pressure(i) < level) {
                    continue;
                }
                start = Math.min(t1, p0 >= level ? t0 : t0 + (level - p0) / slope);
                p0 += slope * (start - t0);
                t0 = start;
            }
            integral += (t1 - t0) * (p0 + slope * (t1 - t0) / 2);
        }
        double peak = Math.max(
                firing.maximumPressure(),
                settled(firing, motor) + spike / motor.nozzle().throatArea());
        return end > start
                ? Optional.of(new Prediction(firing, start, peak, integral / (end - start), end - start))
                : Optional.empty();
    }

    /** Pressure where the flame is trusted to be everywhere: on it an ignition spike stands [Pa, absolute]. */
    public double settledPressure(Motor motor) {
        return settled(firing, motor);
    }

    private static double settled(SimulatedFiring firing, Motor motor) {
        int i = 0;
        while (i < firing.size() - 1
                && firing.web(i) < RateEstimate.TRANSIENT * motor.grain().burnout()) {
            i++;
        }
        return firing.pressure(i);
    }
}
