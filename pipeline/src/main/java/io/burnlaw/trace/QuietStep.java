package io.burnlaw.trace;

import java.util.OptionalInt;

/**
 * A small step inside an apparently quiet part: a motor that smoulders at a few thousandths of its pressure, before the
 * main burn or behind it, which would otherwise be taken as the zero.
 *
 * <p>The part is cut into blocks; for each place the medians of the blocks before and after it are compared. A step
 * counts where the difference stands out of the scatter from block to block, and where a step describes the blocks
 * better than a straight line, which is how a zero drifts.
 *
 * <p><b>Source.</b> One change of the mean, least squares: Hinkley, Biometrika 57 (1970) 1, from memory.
 */
public final class QuietStep {

    private static final int MOST_BLOCKS = 60;
    private static final int FEWEST_BLOCKS = 8;
    private static final int FEWEST_SAMPLES = 4;

    /** Significance of the largest of some fifty differences, in standard deviations. */
    private static final double STDS = 6;

    /** A step below this share of the range moves no rate that matters [1]. */
    private static final double LEAST = 0.001;

    private QuietStep() {}

    /** From its first to its third quarter a smoulder falls by less than this share of its step [1]; a warmed sensor by more. */
    private static final double HOLDS = 0.25;

    /** What is left after the end of a smoulder is the zero of before, within this share of the step [1]. */
    private static final double BACK = 0.25;

    /**
     * The end of a smoulder behind the main burn: a level that holds and then falls to the zero of before. A warmed sensor
     * comes back fast at first.
     *
     * @param from  index after the main fall
     * @param zero  reading when nothing happens, before the burn
     * @param range highest reading above it
     * @return index of the first sample after the step; empty where there is none
     */
    public static OptionalInt end(double[] values, int from, double zero, double range) {
        double[] backward = new double[values.length - from];
        for (int i = 0; i < backward.length; i++) {
            backward[i] = values[values.length - 1 - i];
        }
        int length = cut(backward, backward.length, range);
        if (length == backward.length) {
            return OptionalInt.empty();
        }
        int quarter = (backward.length - length) / 4;
        double after = Scatter.median(backward, 0, length);
        double third = Scatter.median(backward, length + quarter, length + 2 * quarter);
        double first = Scatter.median(backward, length + 3 * quarter, backward.length);
        boolean ends = Math.abs(after - zero) < BACK * (third - after) && first - third < HOLDS * (third - after);
        return ends ? OptionalInt.of(values.length - length) : OptionalInt.empty();
    }

    /**
     * Cuts a quiet part at its step.
     *
     * @param end   index after the last sample of the quiet part, which begins at 0
     * @param range highest smoothed reading above the quiet one
     * @return index after the last sample before the step; {@code end} where there is none
     */
    static int cut(double[] values, int end, double range) {
        int blocks = Math.min(MOST_BLOCKS, end / FEWEST_SAMPLES);
        if (blocks < FEWEST_BLOCKS) {
            return end;
        }
        double[] level = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            level[b] = Scatter.median(values, edge(end, b, blocks), edge(end, b + 1, blocks));
        }
        double[] change = new double[blocks - 1];
        for (int b = 0; b < change.length; b++) {
            change[b] = (level[b + 1] - level[b]) / Math.sqrt(2);
        }
        double std = Scatter.std(change, 0, change.length);
        double mean = Scatter.mean(level, 0, blocks);
        int best = 0;
        double most = 0;
        double before = 0;
        for (int k = 1; k < blocks - 1; k++) {
            before += level[k - 1] - mean;
            // Sum of squares that a step at k explains.
            double explained = before * before * blocks / ((double) k * (blocks - k));
            if (k >= 2 && explained > most) {
                most = explained;
                best = k;
            }
        }
        if (best == 0) {
            return end;
        }
        double step = Scatter.mean(level, best, blocks) - Scatter.mean(level, 0, best);
        boolean seen = most > STDS * STDS * std * std && step > LEAST * range && most > byLine(level, mean);
        return seen ? edge(end, best, blocks) : end;
    }

    private static int edge(int end, int block, int blocks) {
        return (int) ((long) end * block / blocks);
    }

    /** Sum of squares that a straight line explains. */
    private static double byLine(double[] level, double mean) {
        double middle = (level.length - 1) / 2.0;
        double together = 0;
        double spread = 0;
        for (int b = 0; b < level.length; b++) {
            together += (b - middle) * (level[b] - mean);
            spread += (b - middle) * (b - middle);
        }
        return together * together / spread;
    }
}
