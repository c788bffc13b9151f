package io.burnlaw.regime;

import java.util.Arrays;

/**
 * Laws that may jump at a break: the exact least-squares partition into 1, 2, … straight pieces by dynamic programming
 * over the places of the breaks (Bai and Perron 2003, section 3; Bellman and Roth 1969).
 *
 * <p>The costs of all pieces come from running sums, so that a simulated campaign costs O(places²). Above
 * {@value #MOST_PLACES} places between points, an even choice of that many is searched.
 */
final class JumpingSearch {

    private static final int MOST_PLACES = 120;

    /** Whether the pieces have a slope; constant pieces serve step changes of a mean. */
    enum Pieces {
        CONSTANT,
        SLOPED
    }

    private final double[] x;
    private final double[] w;
    private final int most;
    private final int[] edges;
    private final double[] weight;
    private final double[] middle;
    private final double[] spread;
    private final boolean[] allowed;
    private final Pieces pieces;

    JumpingSearch(Sample sample, int most, int minimumPoints, Pieces pieces) {
        this.x = sample.xs();
        this.w = sample.ws();
        this.most = most;
        this.pieces = pieces;
        this.edges = edges(sample);
        int m = edges.length;
        weight = new double[m * m];
        middle = new double[m * m];
        spread = new double[m * m];
        allowed = new boolean[m * m];
        for (int a = 0; a < m; a++) {
            for (int b = a + 1; b < m; b++) {
                int at = a * m + b;
                Line line = Line.through(x, x, w, edges[a], edges[b]);
                weight[at] = line.weight();
                middle[at] = line.middle();
                spread[at] = line.spread();
                allowed[at] = pieces == Pieces.CONSTANT
                        ? edges[b] - edges[a] >= minimumPoints
                        : sample.carries(edges[a], edges[b], minimumPoints);
            }
        }
        // one law over everything is always there to compare with
        allowed[m - 1] = true;
    }

    private static int[] edges(Sample sample) {
        int[] steps = sample.steps();
        int kept = Math.min(steps.length, MOST_PLACES);
        int[] edges = new int[kept + 2];
        for (int i = 0; i < kept; i++) {
            edges[i + 1] = steps[(int) ((i + 0.5) * steps.length / kept)];
        }
        edges[kept + 1] = sample.size();
        return edges;
    }

    /**
     * Best partitions of each count.
     *
     * @param rss    weighted sum of squares for 1, 2, … pieces; infinite where a count is impossible
     * @param starts first point of each piece, by count
     */
    record Best(double[] rss, int[][] starts) {}

    /** {@return the least sum of squares for 1, 2, … pieces} */
    double[] rss(double[] y) {
        return search(y, most, null);
    }

    /** {@return the least sum of squares for so many pieces and one fewer; infinite where there can't be so many} */
    double[] pair(double[] y, int count) {
        double[] rss = search(y, count, null);
        return new double[] {rss[count - 2], rss[count - 1]};
    }

    Best best(double[] y) {
        int[][] starts = new int[most][];
        double[] rss = search(y, most, starts);
        return new Best(rss, starts);
    }

    /**
     * Profile of the sum of squares over the place of one break, the others free.
     *
     * @param which the break whose place is held, from 0
     * @return by edge; a place is the first point after the break
     */
    Profile profile(double[] y, int count, int which) {
        int m = edges.length;
        double[] cost = costs(y);
        double[][] before = forward(cost, which + 1);
        double[][] after = backward(cost, count - which - 1);
        double[] places = new double[m];
        double[] least = new double[m];
        for (int e = 0; e < m; e++) {
            places[e] = edges[e];
            least[e] = before[which + 1][e] + after[count - which - 1][e];
        }
        return new Profile(places, least);
    }

    private double[][] forward(double[] cost, int count) {
        int m = edges.length;
        double[][] least = new double[count + 1][m];
        for (double[] row : least) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        least[0][0] = 0;
        for (int k = 1; k <= count; k++) {
            for (int b = 1; b < m; b++) {
                for (int a = 0; a < b; a++) {
                    least[k][b] = Math.min(least[k][b], least[k - 1][a] + cost[a * m + b]);
                }
            }
        }
        return least;
    }

    private double[][] backward(double[] cost, int count) {
        int m = edges.length;
        double[][] least = new double[count + 1][m];
        for (double[] row : least) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        least[0][m - 1] = 0;
        for (int k = 1; k <= count; k++) {
            for (int a = 0; a < m - 1; a++) {
                for (int b = a + 1; b < m; b++) {
                    least[k][a] = Math.min(least[k][a], cost[a * m + b] + least[k - 1][b]);
                }
            }
        }
        return least;
    }

    private double[] search(double[] y, int count, int[][] starts) {
        int m = edges.length;
        double[] cost = costs(y);
        double[][] least = new double[count + 1][m];
        int[][] from = new int[count + 1][m];
        for (double[] row : least) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        least[0][0] = 0;
        for (int k = 1; k <= count; k++) {
            for (int b = 1; b < m; b++) {
                for (int a = 0; a < b; a++) {
                    double sum = least[k - 1][a] + cost[a * m + b];
                    if (sum < least[k][b]) {
                        least[k][b] = sum;
                        from[k][b] = a;
                    }
                }
            }
        }
        double[] rss = new double[count];
        for (int k = 1; k <= count; k++) {
            rss[k - 1] = least[k][m - 1];
            if (starts != null) {
                int[] at = new int[k];
                int b = m - 1;
                for (int j = k; j >= 1 && rss[k - 1] < Double.POSITIVE_INFINITY; j--) {
                    b = from[j][b];
                    at[j - 1] = edges[b];
                }
                starts[k - 1] = at;
            }
        }
        return rss;
    }

    private double[] costs(double[] y) {
        int m = edges.length;
        double[] sy = new double[m];
        double[] sxy = new double[m];
        double[] syy = new double[m];
        int i = 0;
        for (int e = 1; e < m; e++) {
            sy[e] = sy[e - 1];
            sxy[e] = sxy[e - 1];
            syy[e] = syy[e - 1];
            for (; i < edges[e]; i++) {
                sy[e] += w[i] * y[i];
                sxy[e] += w[i] * x[i] * y[i];
                syy[e] += w[i] * y[i] * y[i];
            }
        }
        double[] cost = new double[m * m];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        for (int a = 0; a < m; a++) {
            for (int b = a + 1; b < m; b++) {
                int at = a * m + b;
                if (allowed[at]) {
                    double sum = sy[b] - sy[a];
                    double rss = syy[b] - syy[a] - sum * sum / weight[at];
                    double slope = sxy[b] - sxy[a] - middle[at] * sum;
                    if (pieces == Pieces.SLOPED && spread[at] > 0) {
                        rss -= slope * slope / spread[at];
                    }
                    cost[at] = Math.max(0, rss);
                }
            }
        }
        return cost;
    }
}
