package io.burnlaw.trace;

/**
 * A small step up inside what passes for the quiet part before ignition: a motor that smoulders at a few thousandths of
 * its later pressure, which would otherwise be taken for the zero.
 *
 * <p>The part is cut into blocks; for each place the medians of the blocks before and after it are compared. A step
 * counts where the difference stands out of the scatter from block to block, and where a step describes the blocks
 * better than a straight line, which is how a zero drifts.
 *
 * <p><b>Source.</b> One change of the mean, least squares: Hinkley, Biometrika 57 (1970) 1, from memory.
 */
final class QuietStep {

    private static final int MOST_BLOCKS = 60;
    private static final int FEWEST_BLOCKS = 8;
    private static final int FEWEST_SAMPLES = 4;

    /** Significance of the largest of some fifty differences, in standard deviations. */
    private static final double STDS = 6;

    /** A step below this share of the range moves no rate that matters [1]. */
    private static final double LEAST = 0.001;

    private QuietStep() {}

    /**
     * Cuts a quiet part at its step.
     *
     * @param values record
     * @param end    index after the last sample of the quiet part, which begins at 0
     * @param range  highest smoothed reading above the quiet one
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
