package io.burnlaw.reduction.point;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The time that a motor spent at each pressure while its web burned. This is enough for a power mean, so the trace need
 * not be kept.
 *
 * <pre>
 *     P_m = ( sum of P_i^m dt_i, over sum of dt_i )^(1/m)                                         [Pa]
 * </pre>
 *
 * <p><b>Source.</b> Rate-averaged pressure: DeLuca et al., RTO-MP-091 paper 35, nomenclature (p_nb).
 */
public final class PressureDistribution {

    private final KeptColumns columns;

    private PressureDistribution(KeptColumns columns) {
        this.columns = columns;
    }

    /**
     * Makes a distribution; the arrays are copied.
     *
     * @param pressure [Pa, absolute], above zero
     * @param duration [s], at least zero, as long as pressure
     * @throws IllegalArgumentException if the lengths differ, nothing is there, or no time passed
     */
    public static PressureDistribution of(double[] pressure, double[] duration) {
        double total = 0;
        if (pressure.length != duration.length) {
            throw new IllegalArgumentException(pressure.length + " pressures but " + duration.length + " durations");
        }
        for (int i = 0; i < pressure.length; i++) {
            if (!(pressure[i] > 0) || !(duration[i] >= 0)) {
                throw new IllegalArgumentException("at " + pressure[i] + " Pa for " + duration[i] + " s");
            }
            total += duration[i];
        }
        if (!(total > 0)) {
            throw new NoTime();
        }
        return new PressureDistribution(KeptColumns.of(pressure, duration));
    }

    /**
     * A single pressure, as a strand has it.
     *
     * @param pressure [Pa, absolute], above zero
     */
    public static PressureDistribution constant(double pressure) {
        return of(new double[] {pressure}, new double[] {1});
    }

    /** The same distribution, kept elsewhere. */
    public PressureDistribution keptIn(NumberStore store) {
        return new PressureDistribution(columns.keptIn(store));
    }

    /**
     * The pressure below which the motor was for a share of the time.
     *
     * @param share from 0 to 1 [1]
     * @return [Pa, absolute]
     */
    public double quantile(double share) {
        double[][] read = columns.read();
        Integer[] order = IntStream.range(0, read[0].length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> read[0][i]))
                .toArray(Integer[]::new);
        double left = share * Arrays.stream(read[1]).sum();
        for (int i : order) {
            left -= read[1][i];
            if (left <= 0) {
                return read[0][i];
            }
        }
        return read[0][order[order.length - 1]];
    }

    /**
     * The power mean.
     *
     * @param exponent m [1]; 1 gives the plain mean, and near 0 the geometric mean is meant
     * @return [Pa, absolute]
     */
    public double powerMean(double exponent) {
        double[][] read = columns.read();
        double[] pressure = read[0];
        double[] duration = read[1];
        double total = 0;
        double sum = 0;
        // Below 1e-6 the root of the mean loses all its digits: there the limit, the geometric mean, is the answer.
        boolean geometric = Math.abs(exponent) < 1e-6;
        for (int i = 0; i < pressure.length; i++) {
            total += duration[i];
            sum += duration[i] * (geometric ? StrictMath.log(pressure[i]) : StrictMath.pow(pressure[i], exponent));
        }
        return geometric ? StrictMath.exp(sum / total) : StrictMath.pow(sum / total, 1 / exponent);
    }

    /** No time passed: ignition and burnout of a firing are at the same time. */
    public static final class NoTime extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;

        NoTime() {
            super("no time passed");
        }
    }
}
