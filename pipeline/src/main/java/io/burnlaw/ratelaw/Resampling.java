package io.burnlaw.ratelaw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Refits of a law to firings drawn with replacement. Firings are drawn, not points: the points of one firing come
 * together or not at all.
 *
 * <p>Between logarithms, with weights that stand as they are in the full fit, the refit is the closed solution of a
 * weighted straight line; in the rate itself it is Gauss-Newton from the full fit. Both give what the optimizer gives,
 * which a test holds, at a thousandth of its time. Where the weights follow from the law's slope (effective variance)
 * they are those of the full fit.
 */
final class Resampling {

    private static final int MOST_DRAWS = 100;
    private static final int MOST_STEPS = 40;

    /** With more firings than this, one hardly moves the law, and a step is as good as a refit, whose time grows as n². */
    private static final int MOST_REFITS = 200;

    private final double[] x;
    private final double[] y;
    private final double[] weight;
    private final double[] start;
    private final boolean power;
    private final int[][] clusters;
    private final double leastSpread;

    Resampling(WeightedSolution solution, List<FitPoint> points) {
        x = solution.x;
        y = solution.y;
        weight = new double[x.length];
        start = solution.parameters;
        power = solution.curve == Curve.POWER;
        Map<String, List<Integer>> members = new LinkedHashMap<>();
        double sum = 0;
        double sumX = 0;
        double sumXx = 0;
        for (int i = 0; i < x.length; i++) {
            weight[i] = solution.weight(i);
            members.computeIfAbsent(points.get(i).cluster(), name -> new ArrayList<>())
                    .add(i);
            sum += weight[i];
            sumX += weight[i] * x[i];
            sumXx += weight[i] * x[i] * x[i];
        }
        clusters = members.values().stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
        // A draw that lies at one pressure up to a thousandth of the campaign's spread has no exponent.
        leastSpread = 1e-6 * (sumXx / sum - sumX * sumX / (sum * sum));
    }

    int clusters() {
        return clusters.length;
    }

    /** Pairs of parameters, one for each replicate; the same for the same seed. */
    double[][] replicates(int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] replicates = new double[count][];
        int[] times = new int[clusters.length];
        for (int r = 0; r < count; r++) {
            for (int draw = 0; replicates[r] == null && draw < MOST_DRAWS; draw++) {
                Arrays.fill(times, 0);
                for (int k = 0; k < clusters.length; k++) {
                    times[random.nextInt(clusters.length)]++;
                }
                replicates[r] = refit(times);
            }
            if (replicates[r] == null) {
                replicates[r] = start;
            }
        }
        return replicates;
    }

    /** Pairs of parameters, each without one firing. */
    double[][] jackknife() {
        if (power && clusters.length <= MOST_REFITS) {
            return IntStream.range(0, clusters.length)
                    .mapToObj(k -> refit(allBut(k)))
                    .map(found -> found == null ? start : found)
                    .toArray(double[][]::new);
        }
        Jackknife lines = power ? steps() : new Jackknife(x, y, weight, clusters);
        double[] from = power ? start : new double[2];
        return IntStream.range(0, clusters.length)
                .mapToObj(k -> lines.without(k, leastSpread))
                .map(line -> line == null ? start : new double[] {from[0] + line[0], from[1] + line[1]})
                .toArray(double[][]::new);
    }

    /** One step of Gauss-Newton from the full fit is a straight line again: of (y - f)/f over x, weighted with w f². */
    private Jackknife steps() {
        double[] left = new double[x.length];
        double[] weights = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double f = StrictMath.exp(start[0] + start[1] * x[i]);
            left[i] = (y[i] - f) / f;
            weights[i] = weight[i] * f * f;
        }
        return new Jackknife(x, left, weights, clusters);
    }

    private int[] allBut(int cluster) {
        int[] times = new int[clusters.length];
        Arrays.fill(times, 1);
        times[cluster] = 0;
        return times;
    }

    /** Parameters with each firing counted so many times; null where these firings leave no exponent. */
    double[] refit(int[] times) {
        double[] found = line(times);
        return found == null || !power ? found : gaussNewton(times);
    }

    private double[] line(int[] times) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int k = 0; k < times.length; k++) {
            if (times[k] > 0) {
                for (int i : clusters[k]) {
                    double w = times[k] * weight[i];
                    sum += w;
                    sumX += w * x[i];
                    sumY += w * y[i];
                }
            }
        }
        double meanX = sumX / sum;
        double meanY = sumY / sum;
        double sxx = 0;
        double sxy = 0;
        for (int k = 0; k < times.length; k++) {
            if (times[k] > 0) {
                for (int i : clusters[k]) {
                    double wx = times[k] * weight[i] * (x[i] - meanX);
                    sxx += wx * (x[i] - meanX);
                    sxy += wx * (y[i] - meanY);
                }
            }
        }
        if (!(sxx / sum > leastSpread)) {
            return null;
        }
        double slope = sxy / sxx;
        return new double[] {meanY - slope * meanX, slope};
    }

    private double[] gaussNewton(int[] times) {
        double p0 = start[0];
        double p1 = start[1];
        for (int step = 0; step < MOST_STEPS; step++) {
            double s00 = 0;
            double s01 = 0;
            double s11 = 0;
            double b0 = 0;
            double b1 = 0;
            for (int k = 0; k < times.length; k++) {
                if (times[k] > 0) {
                    for (int i : clusters[k]) {
                        double f = StrictMath.exp(p0 + p1 * x[i]);
                        double w = times[k] * weight[i] * f;
                        s00 += w * f;
                        s01 += w * f * x[i];
                        s11 += w * f * x[i] * x[i];
                        b0 += w * (y[i] - f);
                        b1 += w * (y[i] - f) * x[i];
                    }
                }
            }
            double determinant = s00 * s11 - s01 * s01;
            double d0 = (s11 * b0 - s01 * b1) / determinant;
            double d1 = (s00 * b1 - s01 * b0) / determinant;
            p0 += d0;
            p1 += d1;
            if (!Double.isFinite(p0 + p1)) {
                return null;
            }
            if (Math.abs(d0) + Math.abs(d1) < 1e-12) {
                return new double[] {p0, p1};
            }
        }
        return new double[] {p0, p1};
    }

    /**
     * Weighted straight lines through all clusters of points but one, each by sums over the clusters before it and
     * after it: as many steps as there are points, and nothing is subtracted.
     */
    private static final class Jackknife {

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
}
