package io.burnlaw.trace;

import java.util.Arrays;

/**
 * The value of a given rank, without sorting the others: values are counted into even classes between the least and the
 * greatest, and only the class that holds the rank is looked at. Three passes over the values, whatever their order.
 */
public final class Ranked {

    /** Below this many values sorting is as quick. */
    private static final int FEW = 256;

    private static final int MOST_CLASSES = 4096;

    private Ranked() {}

    /**
     * The value that would stand at {@code rank} if {@code values[from..to)} were sorted.
     *
     * @param values none of them NaN; left as they are
     * @param from   first index
     * @param to     index after the last
     * @param rank   from 0
     * @return the value
     */
    public static double at(double[] values, int from, int to, int rank) {
        return between(values, from, to, rank, rank);
    }

    /**
     * Median of {@code values[from..to)}: of an even number the mean of the two in the middle.
     *
     * @param values none of them NaN; left as they are
     * @param from   first index
     * @param to     index after the last, beyond the first
     * @return the median
     */
    public static double median(double[] values, int from, int to) {
        int n = to - from;
        return between(values, from, to, (n - 1) / 2, n / 2);
    }

    /** Mean of the values of two ranks, the second one the first or the next. */
    private static double between(double[] values, int from, int to, int first, int second) {
        int n = to - from;
        if (n <= FEW) {
            return sorted(Arrays.copyOfRange(values, from, to), first, second);
        }
        double low = values[from];
        double high = values[from];
        for (int i = from; i < to; i++) {
            low = Math.min(low, values[i]);
            high = Math.max(high, values[i]);
        }
        int classes = Math.min(MOST_CLASSES, n / 8);
        double scale = classes / (high - low);
        if (!(scale > 0 && scale < Double.POSITIVE_INFINITY)) {
            return low == high ? low : sorted(Arrays.copyOfRange(values, from, to), first, second);
        }
        int[] count = new int[classes + 1];
        for (int i = from; i < to; i++) {
            count[(int) ((values[i] - low) * scale)]++;
        }
        int lower = 0;
        int below = 0;
        while (below + count[lower] <= first) {
            below += count[lower++];
        }
        int upper = lower;
        int within = count[lower];
        while (below + within <= second) {
            within += count[++upper];
        }
        double[] middle = new double[within];
        int used = 0;
        for (int i = from; used < within; i++) {
            int at = (int) ((values[i] - low) * scale);
            if (at >= lower && at <= upper) {
                middle[used++] = values[i];
            }
        }
        // A few far values crowd all others into one class: there the same once more, between closer bounds.
        return within < n ? between(middle, 0, within, first - below, second - below) : sorted(middle, first, second);
    }

    private static double sorted(double[] values, int first, int second) {
        Arrays.sort(values);
        return first == second ? values[first] : 0.5 * (values[first] + values[second]);
    }
}
