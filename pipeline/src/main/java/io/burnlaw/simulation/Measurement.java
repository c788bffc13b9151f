package io.burnlaw.simulation;

import io.burnlaw.ballistics.BurningFaults;
import io.burnlaw.ballistics.Fault;
import io.burnlaw.ballistics.RecordFaults;
import io.burnlaw.trace.Trace;
import java.util.Map;
import java.util.Optional;

/** What the logger and its sensors make of a perfect record. */
final class Measurement {

    private static final double MAINS = 50;

    private final Scenario scenario;
    private final double gain;

    Measurement(Scenario scenario) {
        this.scenario = scenario;
        this.gain = 1
                + scenario.logger().gainError()
                        * Randomness.of(scenario.seed(), "gain").nextGaussian();
    }

    /** The record of a firing with all that was planned to go wrong. */
    Trace measured(TrueFiring firing) {
        Trace trace = firing.record(scenario);
        Randomness random =
                Randomness.of(scenario.seed(), "record " + firing.plan().id());
        Optional<double[]> thrust = trace.hasThrust() ? Optional.of(thrust(trace, random)) : Optional.empty();
        Fault logging = logging(firing.plan().faults(), scenario.logger().quietBefore());
        if (!trace.hasPressure()) {
            return logging.apply(Trace.of(trace.firing(), trace.times(), Optional.empty(), thrust), random);
        }
        Fault burning = burning(firing.plan().faults(), scenario.logger().quietBefore());
        Fault sensor = sensor(firing.plan().faults(), random);
        Trace both = Trace.of(trace.firing(), trace.times(), Optional.of(trace.pressures()), thrust);
        return burning.then(sensor).then(logging).apply(both, random);
    }

    /** The record of a vessel, with the sensor's errors only. */
    Trace measured(Trace vessel) {
        Randomness random = Randomness.of(scenario.seed(), "record " + vessel.firing());
        return sensor(Map.of(), random).apply(vessel, random);
    }

    private double[] thrust(Trace trace, Randomness random) {
        Scenario.Logger logger = scenario.logger();
        double[] thrust = trace.thrusts();
        if (logger.standPeriod() > 0) {
            thrust = StandFaults.swinging(trace.times(), thrust, logger.standPeriod(), logger.standDamping());
        }
        for (int i = 0; i < thrust.length; i++) {
            thrust[i] = logger.thrustEfficiency() * thrust[i] + logger.thrustNoise() * random.nextGaussian();
            if (logger.thrustResolution() > 0) {
                thrust[i] = Math.rint(thrust[i] / logger.thrustResolution()) * logger.thrustResolution();
            }
        }
        return thrust;
    }

    private Fault burning(Map<FaultKey, Double> faults, double before) {
        Fault all = Fault.none();
        double ambient = scenario.ambientPressure();
        if (faults.containsKey(FaultKey.CHUFFING)) {
            int pulses = faults.get(FaultKey.CHUFFING).intValue();
            double period = faults.getOrDefault(FaultKey.CHUFFING_PERIOD, 0.4);
            double height = faults.getOrDefault(FaultKey.CHUFFING_HEIGHT, 0.5e6);
            all = (trace, random) -> {
                double missing = before + (pulses + 1) * period - trace.time(trace.size() - 1);
                Trace longer =
                        missing > 0 ? BurningFaults.longer(missing, ambient).apply(trace, random) : trace;
                return BurningFaults.chuffing(1 / period, before, pulses, height, ambient)
                        .apply(longer, random);
            };
        }
        if (faults.containsKey(FaultKey.HANG_FIRE)) {
            double delay = faults.get(FaultKey.HANG_FIRE);
            all = all.then(BurningFaults.longer(delay, ambient))
                    .then(BurningFaults.hangFire(0.25e6, before, delay, ambient));
        }
        return all;
    }

    private Fault sensor(Map<FaultKey, Double> faults, Randomness random) {
        Scenario.Logger logger = scenario.logger();
        double ambient = scenario.ambientPressure();
        Fault all = RecordFaults.gain(gain, ambient)
                .then(RecordFaults.zeroOffset(
                        logger.zeroOffset() * random.nextGaussian() + faults.getOrDefault(FaultKey.ZERO_OFFSET, 0.0)))
                .then(RecordFaults.noise(Math.hypot(logger.noise(), faults.getOrDefault(FaultKey.NOISE, 0.0))));
        if (faults.containsKey(FaultKey.DRIFT)) {
            all = all.then(RecordFaults.drift(faults.get(FaultKey.DRIFT)));
        }
        if (faults.containsKey(FaultKey.LAG)) {
            all = StandFaults.lag(faults.get(FaultKey.LAG)).then(all);
        }
        if (faults.containsKey(FaultKey.WARMED)) {
            all = all.then(StandFaults.warmed(
                    faults.get(FaultKey.WARMED), faults.getOrDefault(FaultKey.WARMED_RETURN, 8.0), ambient));
        }
        if (faults.containsKey(FaultKey.HUM)) {
            all = all.then(RecordFaults.hum(faults.get(FaultKey.HUM), MAINS));
        }
        if (faults.containsKey(FaultKey.SPIKES)) {
            all = all.then(RecordFaults.spikes(
                    faults.get(FaultKey.SPIKES).intValue(), faults.getOrDefault(FaultKey.SPIKE_HEIGHT, 0.5e6)));
        }
        if (faults.containsKey(FaultKey.CLIPPING)) {
            all = all.then(RecordFaults.clipping(ambient + faults.get(FaultKey.CLIPPING)));
        }
        return logger.resolution() > 0 ? all.then(RecordFaults.quantization(logger.resolution())) : all;
    }

    private static Fault logging(Map<FaultKey, Double> faults, double before) {
        Fault all = Fault.none();
        if (faults.containsKey(FaultKey.UNEVEN_SAMPLING)) {
            all = all.then(RecordFaults.unevenSampling(Math.min(0.49, faults.get(FaultKey.UNEVEN_SAMPLING))));
        }
        if (faults.containsKey(FaultKey.COARSE_SAMPLING)) {
            all = all.then(RecordFaults.coarseSampling(
                    Math.max(1, faults.get(FaultKey.COARSE_SAMPLING).intValue())));
        }
        if (faults.containsKey(FaultKey.LOST_SAMPLES)) {
            all = all.then(RecordFaults.lostSamples(faults.get(FaultKey.LOST_SAMPLES)));
        }
        if (faults.containsKey(FaultKey.GAP)) {
            all = all.then(
                    RecordFaults.gap(before + faults.getOrDefault(FaultKey.GAP_AT, 0.5), faults.get(FaultKey.GAP)));
        }
        if (faults.containsKey(FaultKey.REPEATED_SAMPLES)) {
            all = all.then(RecordFaults.repeatedSamples(
                    faults.get(FaultKey.REPEATED_SAMPLES).intValue()));
        }
        if (faults.containsKey(FaultKey.CLOCK_SET_BACK)) {
            all = all.then(RecordFaults.clockSetBack(
                    before + faults.getOrDefault(FaultKey.CLOCK_SET_BACK_AT, 0.5),
                    faults.get(FaultKey.CLOCK_SET_BACK)));
        }
        if (faults.containsKey(FaultKey.TRUNCATED_AT)) {
            all = all.then(RecordFaults.truncation(before + faults.get(FaultKey.TRUNCATED_AT)));
        }
        return all;
    }

    /**
     * What real stands do to a record, kept apart from the chamber model that the reduction shares: nothing here knows
     * how the reduction looks at it.
     */
    private static final class StandFaults {

        /** Above this share of the highest pressure the flame heats the sensor [1]. */
        private static final double HOT = 0.2;

        private StandFaults() {}

        /**
         * A sensor whose zero moves as the flame warms it, and comes back when the motor is out. The warmth comes as
         * through a thin wall, with the square root of the time of burning, and goes in two stages, one three times as
         * quick and one half as quick as stated.
         *
         * @param size    of the change at the end of the burn [Pa]
         * @param back    time constant of the return [s]
         * @param ambient [Pa, absolute]
         */
        static Fault warmed(double size, double back, double ambient) {
            return (trace, random) -> {
                double[] p = trace.pressures();
                double highest = 0;
                for (double each : p) {
                    highest = Math.max(highest, each - ambient);
                }
                int lit = 0;
                while (lit < p.length - 1 && p[lit] - ambient < HOT * highest) {
                    lit++;
                }
                int out = p.length - 1;
                while (out > lit && p[out] - ambient < HOT * highest) {
                    out--;
                }
                double from = trace.time(lit);
                double to = trace.time(out);
                for (int i = lit; i < p.length; i++) {
                    double t = trace.time(i);
                    p[i] += t <= to
                            ? size * Math.sqrt((t - from) / (to - from))
                            : size
                                    / 2
                                    * (StrictMath.exp(-3 * (t - to) / back) + StrictMath.exp(-(t - to) / (2 * back)));
                }
                return with(trace, p);
            };
        }

        /**
         * A sensor of first order: a long tube or a filter before the converter.
         *
         * @param tau time constant [s]
         */
        static Fault lag(double tau) {
            return (trace, random) -> {
                double[] p = trace.pressures();
                double[] seen = p.clone();
                for (int i = 1; i < p.length; i++) {
                    double share = -StrictMath.expm1(-(trace.time(i) - trace.time(i - 1)) / tau);
                    seen[i] = seen[i - 1] + share * (p[i] - seen[i - 1]);
                }
                return with(trace, seen);
            };
        }

        /**
         * What a load cell reads on which a stand swings: a mass on a damped spring.
         *
         * @param time    of the samples [s]
         * @param force   on the stand [N]
         * @param period  of the undamped swing [s]
         * @param damping of the critical one [1]
         * @return force on the cell [N]
         */
        static double[] swinging(double[] time, double[] force, double period, double damping) {
            double w = 2 * Math.PI / period;
            double decay = damping * w;
            double damped = w * Math.sqrt(1 - damping * damping);
            double[] read = force.clone();
            double speed = 0;
            for (int i = 1; i < read.length; i++) {
                // The exact swing about the mean force of the interval.
                double level = 0.5 * (force[i - 1] + force[i]);
                double off = read[i - 1] - level;
                double dt = time[i] - time[i - 1];
                double c = StrictMath.exp(-decay * dt) * StrictMath.cos(damped * dt);
                double s = StrictMath.exp(-decay * dt) * StrictMath.sin(damped * dt);
                read[i] = level + off * c + (speed + decay * off) / damped * s;
                speed = speed * c - (decay * speed + w * w * off) / damped * s;
            }
            return read;
        }

        private static Trace with(Trace trace, double[] pressure) {
            return Trace.of(
                    trace.firing(),
                    trace.times(),
                    Optional.of(pressure),
                    trace.hasThrust() ? Optional.of(trace.thrusts()) : Optional.empty());
        }
    }
}
