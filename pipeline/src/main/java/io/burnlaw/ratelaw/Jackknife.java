package io.burnlaw.ratelaw;

import java.util.Arrays;

/**
 * Weighted straight lines through all clusters of points but one, each by sums over the clusters before it and after it: as
 * many steps as there are points, and nothing is subtracted.
 */
final class Jackknife {

    private static final int W = 0;
    private static final int WX = 1;
    private static final int WY = 2;
    private static final int WXX = 3;
    private static final int WXY = 4;
    private static final int SUMS = 5;

    private final double centreX;
    private final double centreY;
    private final double[][] before;
    private final double[][] after;

    /**
     * Sums them up.
     *
     * @param x        places
     * @param y        values, as many
     * @param weight   weights, as many, above zero
     * @param clusters indices of the points of each cluster
     */
    Jackknife(double[] x, double[] y, double[] weight, int[][] clusters) {
        // About their middles, so that the spread is no small difference of large sums.
        centreX = Arrays.stream(x).average().orElse(0);
        centreY = Arrays.stream(y).average().orElse(0);
        int n = clusters.length;
        before = new double[n + 1][SUMS];
        after = new double[n + 1][SUMS];
        for (int k = 0; k < n; k++) {
            before[k + 1] = plus(before[k], clusters[k], x, y, weight);
        }
        for (int k = n - 1; k >= 0; k--) {
            after[k] = plus(after[k + 1], clusters[k], x, y, weight);
        }
    }

    private double[] plus(double[] sums, int[] cluster, double[] x, double[] y, double[] weight) {
        double[] more = sums.clone();
        for (int i : cluster) {
            double dx = x[i] - centreX;
            double dy = y[i] - centreY;
            more[W] += weight[i];
            more[WX] += weight[i] * dx;
            more[WY] += weight[i] * dy;
            more[WXX] += weight[i] * dx * dx;
            more[WXY] += weight[i] * dx * dy;
        }
        return more;
    }

    /**
     * The line without one cluster.
     *
     * @param cluster     which, from 0
     * @param leastSpread of the variance of the places, below which there is no line
     * @return its value at 0 and its slope; null where the places of the others are all one
     */
    double[] without(int cluster, double leastSpread) {
        double[] sums = new double[SUMS];
        for (int s = 0; s < SUMS; s++) {
            sums[s] = before[cluster][s] + after[cluster + 1][s];
        }
        double sxx = sums[WXX] - sums[WX] * sums[WX] / sums[W];
        double sxy = sums[WXY] - sums[WX] * sums[WY] / sums[W];
        if (!(sxx / sums[W] > leastSpread)) {
            return null;
        }
        double slope = sxy / sxx;
        double middle = centreY + sums[WY] / sums[W] - slope * (centreX + sums[WX] / sums[W]);
        return new double[] {middle, slope};
    }
}
