package io.burnlaw.ballistics;

import io.burnlaw.trace.Trace;
import java.util.Optional;

/**
 * A perfect data logger: makes an even record of a simulated firing with the quiet time around it. What real sensors add
 * is in {@link RecordFaults}.
 *
 * @param sampleRate  [1/s]
 * @param quietBefore recorded before the igniter is lit [s]
 * @param quietAfter  recorded after the end of the firing [s]
 * @param what        which sensors there are
 */
public record Recorder(double sampleRate, double quietBefore, double quietAfter, Sensors what) {

    /** Which sensors record. */
    public enum Sensors {
        /** A pressure sensor only. */
        PRESSURE,
        /** A load cell only. */
        THRUST,
        /** Both. */
        PRESSURE_AND_THRUST
    }

    public Recorder {
        if (!(sampleRate > 0 && quietBefore >= 0 && quietAfter >= 0)) {
            throw new IllegalArgumentException("no recorder: " + sampleRate + " samples a second, quiet for "
                    + quietBefore + " s before and " + quietAfter + " s after");
        }
    }

    /**
     * A pressure recorder.
     *
     * @param sampleRate  [1/s]
     * @param quietBefore [s]
     * @param quietAfter  [s]
     */
    public Recorder(double sampleRate, double quietBefore, double quietAfter) {
        this(sampleRate, quietBefore, quietAfter, Sensors.PRESSURE);
    }

    /** {@return time between two samples [s]} */
    public double interval() {
        return 1 / sampleRate;
    }

    /**
     * Records a firing; straight lines between its samples, so it is best simulated at the recorder's interval.
     *
     * @param ambient pressure of the quiet time [Pa, absolute]
     * @return the record; its time is 0 at the first sample
     */
    public Trace record(String id, SimulatedFiring firing, double ambient) {
        double length = quietBefore + firing.time(firing.size() - 1) + quietAfter;
        int samples = (int) Math.floor(length * sampleRate) + 1;
        double[] time = new double[samples];
        double[] pressure = new double[samples];
        double[] thrust = new double[samples];
        int at = 0;
        for (int i = 0; i < samples; i++) {
            time[i] = i / sampleRate;
            double since = time[i] - quietBefore;
            if (since < 0 || since > firing.time(firing.size() - 1)) {
                pressure[i] = ambient;
                continue;
            }
            while (at < firing.size() - 2 && firing.time(at + 1) < since) {
                at++;
            }
            double share = (since - firing.time(at)) / (firing.time(at + 1) - firing.time(at));
            pressure[i] = firing.pressure(at) + share * (firing.pressure(at + 1) - firing.pressure(at));
            thrust[i] = firing.thrust(at) + share * (firing.thrust(at + 1) - firing.thrust(at));
        }
        return Trace.of(
                id,
                time,
                what == Sensors.THRUST ? Optional.empty() : Optional.of(pressure),
                what == Sensors.PRESSURE ? Optional.empty() : Optional.of(thrust));
    }
}
