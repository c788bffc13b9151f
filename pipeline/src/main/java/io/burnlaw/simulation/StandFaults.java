package io.burnlaw.simulation;

import io.burnlaw.ballistics.Fault;
import io.burnlaw.trace.Trace;
import java.util.Optional;

/**
 * What real stands do to a record, kept apart from the chamber model that the reduction shares: nothing here knows how the
 * reduction looks at it.
 */
final class StandFaults {

    /** Above this share of the highest pressure the flame heats the sensor [1]. */
    private static final double HOT = 0.2;

    private StandFaults() {}

    /**
     * A sensor whose zero moves as the flame warms it, and comes back when the motor is out. The warmth comes as through a
     * thin wall, with the square root of the time of burning, and goes in two stages, one three times as quick and one
     * half as quick as stated.
     *
     * @param size    of the change at the end of the burn [Pa]
     * @param back    time constant of the return [s]
     * @param ambient [Pa, absolute]
     * @return the fault
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
                        : size / 2 * (StrictMath.exp(-3 * (t - to) / back) + StrictMath.exp(-(t - to) / (2 * back)));
            }
            return with(trace, p);
        };
    }

    /**
     * A sensor of first order: a long tube or a filter before the converter.
     *
     * @param tau time constant [s]
     * @return the fault
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
