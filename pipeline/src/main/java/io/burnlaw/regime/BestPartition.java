package io.burnlaw.regime;

import java.util.Arrays;

/**
 * The cheapest way to part points into straight pieces with some bad points in each, by dynamic programming over the number
 * of pieces and of bad points.
 *
 * @param single the least cost of one piece over all points
 * @param ends   edges of its pieces, by their place among all edges
 * @param bad    number of bad points in each piece
 */
record BestPartition(double cost, double single, int[] ends, int[] bad) {

    private static final int MOST_PIECES = 5;

    /**
     * Searches all partitions.
     *
     * @param costs   of each piece, by its first edge, its last edge and its number of bad points; infinite where there is
     *                no such piece
     * @param mostBad bad points in all
     * @param further cost of each piece after the first
     * @return the partition with the least sum of costs
     */
    static BestPartition of(double[][][] costs, int mostBad, double further) {
        int m = costs.length;
        double[][][] least = new double[MOST_PIECES + 1][m][mostBad + 1];
        int[][][] from = new int[MOST_PIECES + 1][m][mostBad + 1];
        int[][][] own = new int[MOST_PIECES + 1][m][mostBad + 1];
        for (double[][] plane : least) {
            for (double[] row : plane) {
                Arrays.fill(row, Double.POSITIVE_INFINITY);
            }
        }
        least[0][0][0] = 0;
        for (int k = 1; k <= MOST_PIECES; k++) {
            for (int b = 1; b < m; b++) {
                for (int a = 0; a < b; a++) {
                    for (int before = 0; before <= mostBad; before++) {
                        if (least[k - 1][a][before] == Double.POSITIVE_INFINITY) {
                            continue;
                        }
                        for (int here = 0; here + before <= mostBad; here++) {
                            double sum = least[k - 1][a][before] + costs[a][b][here] + (k > 1 ? further : 0);
                            if (sum < least[k][b][before + here]) {
                                least[k][b][before + here] = sum;
                                from[k][b][before + here] = a;
                                own[k][b][before + here] = here;
                            }
                        }
                    }
                }
            }
        }
        double single = Arrays.stream(least[1][m - 1]).min().orElseThrow();
        BestPartition best = new BestPartition(Double.POSITIVE_INFINITY, single, new int[] {0}, new int[0]);
        for (int k = 1; k <= MOST_PIECES; k++) {
            for (int bad = 0; bad <= mostBad; bad++) {
                if (least[k][m - 1][bad] < best.cost) {
                    int[] ends = new int[k + 1];
                    int[] each = new int[k];
                    int b = m - 1;
                    int left = bad;
                    for (int j = k; j >= 1; j--) {
                        ends[j] = b;
                        each[j - 1] = own[j][b][left];
                        int a = from[j][b][left];
                        left -= each[j - 1];
                        b = a;
                    }
                    best = new BestPartition(least[k][m - 1][bad], single, ends, each);
                }
            }
        }
        return best;
    }
}
