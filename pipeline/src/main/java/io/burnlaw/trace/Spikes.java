package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.Arrays;
import java.util.List;

/**
 * Single wild samples, found by a Hampel filter and replaced by the median of their neighbours.
 *
 * <p>A sample counts as a spike where it stands further off the running median than seven standard deviations of what
 * samples usually do there, and than a hundredth of the range, and where the record comes back to its level within
 * three samples: a pressure that rises and stays is no spike, however steep, and neither is the top of a pulse whose
 * flanks are nearly as steep.
 *
 * <p><b>Source.</b> Hampel, J. Amer. Statist. Assoc. 69 (1974) 383; as a moving filter: Pearson, Mining Imperfect Data
 * (2005), section 4.2. Both from memory.
 */
final class Spikes {

    /** Neighbours on each side in the running median. */
    private static final int REACH = 4;

    /** Widest spike, in samples. */
    private static final int WIDEST = 3;

    /** How much higher than the steepest change beside it a spike is. */
    private static final double STEEPER = 1.5;

    /** Samples in a stretch whose usual scatter is taken on its own. */
    private static final int STRETCH = 64;

    private static final double STDS = 7;
    private static final double SHARE_OF_RANGE = 0.01;

    private Spikes() {}

    /**
     * The record without spikes.
     *
     * @param values  as recorded where nothing was a spike
     * @param finding what was replaced; empty where nothing was
     */
    record Despiked(double[] values, List<Finding> finding) {}

    static Despiked remove(double[] time, double[] values, Channel channel) {
        int n = values.length;
        if (n < 4 * REACH) {
            return new Despiked(values, List.of());
        }
        double least = SHARE_OF_RANGE * extent(values);
        if (standing(values, restless(values, least), least).length == 0) {
            return new Despiked(values, List.of());
        }
        // What samples usually do takes long to find, and most records have nothing to hold against it.
        double[] median = RunningMedian.ofNine(values);
        int[] standing = standing(values, median, least);
        double[] off = new double[n];
        for (int i = 0; i < n; i++) {
            off[i] = values[i] - median[i];
        }
        double overall = overallStd(values, off);
        double[] mended = values.clone();
        int count = 0;
        int highest = -1;
        for (int i : standing) {
            if (Math.abs(off[i]) > STDS * overall && Math.abs(off[i]) > STDS * localStd(off, i)) {
                mended[i] = median[i];
                count++;
                if (highest < 0 || Math.abs(off[i]) > Math.abs(off[highest])) {
                    highest = i;
                }
            }
        }
        if (count == 0) {
            return new Despiked(values, List.of());
        }
        return new Despiked(
                mended,
                List.of(Finding.at(
                        FindingCode.SPIKES,
                        Sentence.of(
                                "%d of %d samples of the %s differ from their neighbours, the furthest by %.3g %s at %.4g s;"
                                        + " each was replaced by the median of its neighbours.",
                                count,
                                n,
                                channel.name(),
                                Math.abs(off[highest]) / channel.unit(),
                                channel.symbol(),
                                time[highest]),
                        time[highest])));
    }

    /** From the lowest to the highest median of nine, of some hundreds of them: single samples do not count. */
    private static double extent(double[] values) {
        int step = Math.max(1, values.length / 250);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = REACH; i < values.length - REACH; i += step) {
            double median = RunningMedian.about(values, i, REACH);
            low = Math.min(low, median);
            high = Math.max(high, median);
        }
        return high - low;
    }

    /**
     * The running median where samples near each other differ by more than a spike's least height, elsewhere the values
     * themselves: a sample stands no further off a median than the extremes around it stand apart.
     */
    private static double[] restless(double[] values, double least) {
        double[] median = values.clone();
        for (int from = 0; from < values.length; from += STRETCH) {
            int begin = Math.max(0, from - REACH);
            int end = Math.min(values.length, from + STRETCH + REACH);
            if (apart(values, begin, end) > least) {
                double[] near = RunningMedian.ofNine(Arrays.copyOfRange(values, begin, end));
                System.arraycopy(near, from - begin, median, from, Math.min(STRETCH, values.length - from));
            }
        }
        return median;
    }

    private static double apart(double[] values, int from, int to) {
        double low = values[from];
        double high = values[from];
        for (int i = from; i < to; i++) {
            if (values[i] > high) {
                high = values[i];
            } else if (values[i] < low) {
                low = values[i];
            }
        }
        return high - low;
    }

    /** The samples that stand off their median, and that the record comes back from. */
    private static int[] standing(double[] values, double[] median, double least) {
        int[] standing = new int[16];
        int count = 0;
        for (int i = REACH; i < values.length - REACH; i++) {
            if (Math.abs(values[i] - median[i]) > least && comesBack(values, median[i], i)) {
                standing = count == standing.length ? Arrays.copyOf(standing, 2 * count) : standing;
                standing[count++] = i;
            }
        }
        return Arrays.copyOf(standing, count);
    }

    /** What samples usually do about the running median, over the whole record. */
    private static double overallStd(double[] values, double[] off) {
        // On a slope steeper than the noise a sample is its own median: only second differences see the noise there.
        return Math.max(Scatter.stdOfMoving(off), Scatter.fastStd(values, 0, values.length));
    }

    /** The same over the stretch that a sample stands in and the two beside it. */
    private static double localStd(double[] off, int i) {
        int from = i - i % STRETCH;
        return Scatter.std(off, Math.max(0, from - STRETCH), Math.min(off.length, from + 2 * STRETCH));
    }

    /** Whether the samples on both sides of the excursion agree with each other far better than with it. */
    private static boolean comesBack(double[] values, double median, int i) {
        int left = i;
        int right = i;
        double height = values[i] - median;
        while (left > 0
                && i - left < WIDEST
                && (values[left] - median) * Math.signum(height) > 0.3 * Math.abs(height)) {
            left--;
        }
        while (right < values.length - 1
                && right - i < WIDEST
                && (values[right] - median) * Math.signum(height) > 0.3 * Math.abs(height)) {
            right++;
        }
        boolean narrow = right - left - 1 <= WIDEST;
        return narrow
                && Math.abs(values[left] - values[right]) < 0.5 * Math.abs(height)
                && Math.abs(height) > STEEPER * steepestBeside(values, left, right);
    }

    /** The largest change from sample to sample on both sides of an excursion. */
    private static double steepestBeside(double[] values, int left, int right) {
        double steepest = 0;
        for (int i = Math.max(1, left - REACH); i <= left; i++) {
            steepest = Math.max(steepest, Math.abs(values[i] - values[i - 1]));
        }
        for (int i = right; i < Math.min(values.length - 1, right + REACH); i++) {
            steepest = Math.max(steepest, Math.abs(values[i + 1] - values[i]));
        }
        return steepest;
    }
}
