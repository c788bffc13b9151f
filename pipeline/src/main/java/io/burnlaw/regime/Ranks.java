package io.burnlaw.regime;

import java.util.Arrays;

/** p values by rank: the data stand at place 0 among campaigns that were simulated under the hypothesis. */
final class Ranks {

    private Ranks() {}

    /** {@return for each value, the share of all values (itself included) that are at least as large} */
    static double[] upperTail(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] tail = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int low = 0;
            int high = sorted.length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (sorted[middle] < values[i]) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            tail[i] = (double) (sorted.length - low) / sorted.length;
        }
        return tail;
    }

    /**
     * The p value of place 0 by two figures together: the larger of their leads over their own critical values, where
     * the first has its share of the level and the second the rest.
     */
    static double combined(double[] first, double[] second, double firstWeight, double level) {
        double a = quantile(first, 1 - level * firstWeight);
        double b = quantile(second, 1 - level * (1 - firstWeight));
        double[] lead = new double[first.length];
        for (int i = 0; i < first.length; i++) {
            lead[i] = Math.max(first[i] - a, second[i] - b);
        }
        return upperTail(lead)[0];
    }

    private static double quantile(double[] values, double share) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double at = share * (sorted.length - 1);
        int low = (int) at;
        int high = Math.min(sorted.length - 1, low + 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }
}
