package io.burnlaw.reduction;

import io.burnlaw.trace.Trace;
import java.util.Arrays;

/**
 * What the record shows of its own zero and noise before the motor works.
 *
 * @param offset  of the zero [Pa]
 * @param zeroStd standard uncertainty of the zero [Pa]
 * @param noise   standard deviation of a sample [Pa]
 */
record QuietPart(double offset, double zeroStd, double noise) {

    private static final int ENOUGH = 10;

    static QuietPart of(Trace trace, double ambient) {
        double[] pressure = trace.pressures();
        int n = pressure.length;
        double[] steps = new double[Math.max(1, n - 1)];
        for (int i = 1; i < n; i++) {
            steps[i - 1] = Math.abs(pressure[i] - pressure[i - 1]);
        }
        Arrays.sort(steps);
        // Median of |difference| of two normal samples is 0.6745 sqrt(2) sigma.
        double noise = steps[steps.length / 2] / (0.6745 * Math.sqrt(2));
        double top = Arrays.stream(pressure).max().orElse(ambient);
        int quiet = 0;
        while (quiet < n && pressure[quiet] < ambient + Math.max(0.03 * (top - ambient), 6 * noise)) {
            quiet++;
        }
        quiet = (int) (0.8 * quiet);
        if (quiet < ENOUGH) {
            return new QuietPart(0, 0.002 * (top - ambient), noise);
        }
        double[] before = Arrays.copyOf(pressure, quiet);
        Arrays.sort(before);
        double offset = before[quiet / 2] - ambient;
        return new QuietPart(offset, 1.25 * noise / Math.sqrt(quiet), noise);
    }

    Trace zeroed(Trace trace, double ambient) {
        double[] pressure = trace.pressures();
        for (int i = 0; i < pressure.length; i++) {
            pressure[i] -= offset;
        }
        return trace.withPressure(pressure);
    }
}
