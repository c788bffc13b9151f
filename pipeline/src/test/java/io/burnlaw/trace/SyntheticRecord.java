package io.burnlaw.trace;

import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A plain record made from straight lines and exponentials, whose zero, noise and events are known by construction.
 * Ambient 0.1 MPa, quiet for 0.3 s, up within 20 ms to 3 MPa gauge, level for 1.2 s, then an exponential decay of 30 ms.
 */
final class SyntheticRecord {

    static final double AMBIENT = 1e5;
    static final double TOP = 3e6;
    static final double IGNITION = 0.3;
    static final double BURNOUT = 1.5;

    private SyntheticRecord() {}

    /** Times from 0 to 2.5 s. */
    static double[] time(double samplesPerSecond) {
        double[] time = new double[(int) Math.round(2.5 * samplesPerSecond)];
        for (int i = 0; i < time.length; i++) {
            time[i] = i / samplesPerSecond;
        }
        return time;
    }

    /** Absolute pressures at the times, with white noise. */
    static double[] pressure(double[] time, double noiseStd, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] pressure = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            pressure[i] = AMBIENT + gauge(time[i]) + noiseStd * random.nextGaussian();
        }
        return pressure;
    }

    static Trace trace(double[] time, double[] pressure) {
        return Trace.of("S1", time, Optional.of(pressure), Optional.empty());
    }

    private static double gauge(double t) {
        if (t < IGNITION) {
            return 0;
        }
        if (t < BURNOUT) {
            return TOP * Math.min(1, (t - IGNITION) / 0.02);
        }
        return TOP * Math.exp(-(t - BURNOUT) / 0.03);
    }
}
