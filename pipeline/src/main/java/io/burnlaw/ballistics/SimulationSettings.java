package io.burnlaw.ballistics;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * How a firing is simulated.
 *
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
     */
    public static SimulationSettings of(Ignition ignition) {
        return new SimulationSettings(ignition, 0, 300, 1e-6, Disturbance.none());
    }

    /**
     * The same settings with samples at an even interval.
     *
     * @param interval [s], above 0
     */
    public SimulationSettings sampledEach(double interval) {
        return new SimulationSettings(ignition, interval, timeLimit, tolerance, disturbance);
    }

    /** The same settings with something that goes wrong. */
    public SimulationSettings disturbedBy(Disturbance other) {
        return new SimulationSettings(ignition, sampleInterval, timeLimit, tolerance, other);
    }

    /**
     * The same settings with another time limit.
     *
     * @param limit [s]
     */
    public SimulationSettings withTimeLimit(double limit) {
        return new SimulationSettings(ignition, sampleInterval, limit, tolerance, disturbance);
    }

    /**
     * What goes wrong inside a motor while it burns, as factors that the simulation applies.
     *
     * @param throatFactor by time since the igniter was lit [s]: of the throat area [1], above 0
     * @param rateFactor   by time since then [s] and web burned [m]: of the burning rate [1], at least 0
     */
    public record Disturbance(DoubleUnaryOperator throatFactor, DoubleBinaryOperator rateFactor) {

        private static final DoubleBinaryOperator SAME_RATE = (time, web) -> 1;

        private static final Disturbance NONE = new Disturbance(time -> 1, SAME_RATE);

        /** {@return nothing goes wrong} */
        public static Disturbance none() {
            return NONE;
        }

        /**
         * Something passes the throat.
         *
         * @param at       when it is in the middle of it [s]
         * @param duration from the first to the last of it [s]
         * @param share    of the throat that it covers then [1], below 1
         */
        public static Disturbance blockage(double at, double duration, double share) {
            return new Disturbance(
                    time -> {
                        double from = (time - at) / duration + 0.5;
                        return from <= 0 || from >= 1 ? 1 : 1 - share * (1 - StrictMath.cos(2 * Math.PI * from)) / 2;
                    },
                    SAME_RATE);
        }

        /**
         * The case bursts or the closure is expelled: the opening is suddenly much larger, and the fire goes out.
         *
         * @param at     when [s]
         * @param factor of the opening [1]
         */
        public static Disturbance burst(double at, double factor) {
            return new Disturbance(time -> time < at ? 1 : factor, (time, web) -> time < at ? 1 : 0);
        }

        /**
         * Erosive burning at the start, gone when the port has grown.
         *
         * @param augmentation share by which the first of the web burns faster [1]
         * @param web          after which the share has fallen by e [m]
         */
        public static Disturbance erosiveStart(double augmentation, double web) {
            return new Disturbance(time -> 1, (time, burned) -> 1 + augmentation * StrictMath.exp(-burned / web));
        }

        /** Both disturbances at once. */
        public Disturbance and(Disturbance other) {
            return new Disturbance(
                    time -> throatFactor.applyAsDouble(time) * other.throatFactor.applyAsDouble(time),
                    (time, web) -> rateFactor.applyAsDouble(time, web) * other.rateFactor.applyAsDouble(time, web));
        }
    }
}
