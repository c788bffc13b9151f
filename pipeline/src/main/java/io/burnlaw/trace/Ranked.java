package io.burnlaw.trace;

import java.util.Arrays;

/**
 * The value of a given rank, without sorting the others: values are counted into even classes between the least and the
 * greatest, and only the class that holds the rank is looked at. Three passes over the values, whatever their order.
 */
final class Ranked {

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
    static double at(double[] values, int from, int to, int rank) {
        int n = to - from;
        if (n <= FEW) {
            return sorted(Arrays.copyOfRange(values, from, to), rank);
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
            return low == high ? low : sorted(Arrays.copyOfRange(values, from, to), rank);
        }
        int[] count = new int[classes + 1];
        for (int i = from; i < to; i++) {
            count[(int) ((values[i] - low) * scale)]++;
        }
        int found = 0;
        int below = 0;
        while (below + count[found] <= rank) {
            below += count[found++];
        }
        double[] within = new double[count[found]];
        int used = 0;
        for (int i = from; used < within.length; i++) {
            if ((int) ((values[i] - low) * scale) == found) {
                within[used++] = values[i];
            }
        }
        // A few far values crowd all others into one class: there the same once more, between closer bounds.
        return within.length < n ? at(within, 0, used, rank - below) : sorted(within, rank);
    }

    private static double sorted(double[] values, int rank) {
        Arrays.sort(values);
        return values[rank];
    }
}
