package io.burnlaw.trace;

/**
 * The pressure level of a record while the motor works, without the igniter's spike.
 *
 * <p>A slow motor may burn at a tenth of the spike for half a minute. Shares of the highest reading then do not show
 * when the motor worked; shares of this level do.
 */
public final class WorkingLevel {

    /** What stands higher than so many times the mean is the igniter's spike [1]. */
    private static final double SPIKE = 3;

    private WorkingLevel() {}

    /**
     * The highest reading that is not the igniter's alone: at most three times the mean from where a twentieth of the
     * integral has passed until a twentieth is left.
     *
     * @param zero    reading when nothing happens
     * @param highest highest reading above it
     * @return {@code highest}, or less where that is a spike
     */
    public static double of(double[] values, double zero, double highest) {
        double whole = 0;
        for (double value : values) {
            whole += value - zero;
        }
        double sum = 0;
        int from = 0;
        int to = 0;
        for (int i = 0; i < values.length; i++) {
            sum += values[i] - zero;
            from = sum <= 0.05 * whole ? i + 1 : from;
            to = sum <= 0.95 * whole ? i + 1 : to;
        }
        double mean = 0.9 * whole / Math.max(1, to - from);
        return mean > 0 ? Math.min(highest, SPIKE * mean) : highest;
    }
}
