package io.burnlaw.trace;

import java.util.Arrays;

/**
 * Medians of five and of nine samples about each sample, of fewer at the ends. By least and greatest of pairs alone,
 * without a branch, so that the compiler can work on several samples at a time.
 */
final class RunningMedian {

    private RunningMedian() {}

    static double[] ofFive(double[] x) {
        int n = x.length;
        double[] median = new double[n];
        for (int i = 2; i < n - 2; i++) {
            double low = Math.max(Math.min(x[i - 2], x[i - 1]), Math.min(x[i + 1], x[i + 2]));
            double high = Math.min(Math.max(x[i - 2], x[i - 1]), Math.max(x[i + 1], x[i + 2]));
            median[i] = Math.max(Math.min(low, high), Math.min(Math.max(low, high), x[i]));
        }
        ends(x, median, 2);
        return median;
    }

    /**
     * The median of nine is that of three numbers: the greatest of the least, the median of the medians and the least of
     * the greatest of three triples (Paeth, in Graphics Gems (1990), 171, from memory). A triple is part of three windows.
     */
    static double[] ofNine(double[] x) {
        int n = x.length;
        double[] median = new double[n];
        double[] least = new double[n];
        double[] middle = new double[n];
        double[] greatest = new double[n];
        for (int i = 1; i < n - 1; i++) {
            double low = Math.min(x[i - 1], x[i]);
            double high = Math.max(x[i - 1], x[i]);
            least[i] = Math.min(low, x[i + 1]);
            middle[i] = Math.max(low, Math.min(high, x[i + 1]));
            greatest[i] = Math.max(high, x[i + 1]);
        }
        for (int i = 4; i < n - 4; i++) {
            double a = Math.max(Math.max(least[i - 3], least[i]), least[i + 3]);
            double low = Math.min(middle[i - 3], middle[i]);
            double high = Math.max(middle[i - 3], middle[i]);
            double b = Math.max(low, Math.min(high, middle[i + 3]));
            double c = Math.min(Math.min(greatest[i - 3], greatest[i]), greatest[i + 3]);
            median[i] = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
        }
        ends(x, median, 4);
        return median;
    }

    private static void ends(double[] x, double[] median, int half) {
        int n = x.length;
        for (int i = 0; i < Math.min(half, n); i++) {
            int reach = Math.min(i, n - 1 - i);
            median[i] = about(x, i, reach);
            median[n - 1 - i] = about(x, n - 1 - i, reach);
        }
    }

    /** The median of {@code reach} samples on each side and the one between. */
    static double about(double[] x, int at, int reach) {
        double[] window = Arrays.copyOfRange(x, at - reach, at + reach + 1);
        Arrays.sort(window);
        return window[reach];
    }
}
