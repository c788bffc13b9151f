package io.burnlaw.regime;

import io.burnlaw.regime.TrimmedPieces.Piece;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Finds points that belong to no law: neither to one law over the whole range, nor to one of several side by side.
 *
 * <p>Every way to part the points into up to five straight pieces and up to a quarter of bad points is compared by its
 * probability: points of a piece scatter normally about its line, a bad point may lie anywhere within a factor of 2.2 of
 * it (rarely, of ten), and a further piece must pay for its level, slope and place. The best pieces come from dynamic
 * programming over (pieces, bad points), the line of each from the least trimmed squares over lines through two of its
 * points (Rousseeuw 1984).
 *
 * <p>Priors, all common practice without a source: one firing in twenty is bad, one in four of those that carry a
 * caution; a scatter of 2 %, within a factor of two; an exponent of 0.4 ± 0.5; a change of regime in one campaign in
 * seven.
 */
final class BadPoints {

    /** A bad firing is usually off by less than this factor [ln], nearly always by less than the second. */
    static final double USUAL = Math.log(2.2);

    /** Reduced firings scatter about a law by 2 %, within a factor of two [ln]. */
    private static final double USUAL_SCATTER = Math.log(0.02);

    private static final double SCATTER_STD = Math.log(2);

    private static final double[] SCATTERS = {0.005, 0.008, 0.013, 0.02, 0.03, 0.045, 0.07, 0.1, 0.15, 0.25};
    /** Odds of 20 to 1, on the scale of the costs. */
    private static final double BEYOND_DOUBT = 2 * Math.log(20);

    private static final double BREAK_ODDS = Math.log(6);

    private static final int LEAST_POINTS = 5;
    private static final int MOST_POINTS = 400;
    private static final int MOST_EDGES = 26;
    private final Sample sample;
    private final double[] x;
    private final double[] y;
    private final TrimmedPieces trimmed;
    private final int[] edges;
    private final int mostBad;

    /**
     * What was found.
     *
     * @param places of the bad points in the sample, ascending; at most a quarter
     * @param low    how many of them, from the lowest pressure on, are slower than the others: perhaps a regime
     * @param high   how many of them, from the highest pressure down, are faster
     * @param slow   how many of the others, from the lowest pressure on, burn by a law of their own that is slower by more
     *               than bad firings explain, beyond doubt; 0 for none
     */
    record Found(int[] places, int low, int high, int slow) {}

    private BadPoints(Sample sample, Set<String> cautioned) {
        this.sample = sample;
        x = sample.xs();
        y = sample.ys();
        mostBad = x.length / 4;
        trimmed = new TrimmedPieces(sample, cautioned, mostBad);
        int[] steps = sample.steps();
        int kept = Math.min(steps.length, MOST_EDGES - 2);
        edges = new int[kept + 2];
        for (int i = 0; i < kept; i++) {
            edges[i + 1] = steps[(int) ((i + 0.5) * steps.length / kept)];
        }
        edges[kept + 1] = x.length;
    }

    /**
     * Finds them.
     *
     * @param sample    the points; more than {@value #MOST_POINTS} outvote any of them, and points along few burns are
     *                  off together, so that there none is looked for
     * @param cautioned ids of points whose firing carries a caution
     * @return the points, none where nothing is off
     */
    static Found find(Sample sample, Set<String> cautioned) {
        int n = sample.size();
        return n < LEAST_POINTS || n > MOST_POINTS || 2 * sample.clusters() < n
                ? new Found(new int[0], 0, 0, 0)
                : new BadPoints(sample, cautioned).found();
    }

    private Found found() {
        int m = edges.length;
        Piece[][][] pieces = new Piece[m][m][];
        // on the threads of the pool that the search runs in
        IntStream.range(0, m * m).parallel().filter(at -> at / m < at % m).forEach(at -> {
            pieces[at / m][at % m] = trimmed.of(edges[at / m], edges[at % m]);
        });
        double best = Double.POSITIVE_INFINITY;
        double single = Double.POSITIVE_INFINITY;
        Piece[] chosen = {};
        double further = 2 * BREAK_ODDS + 2 * Math.log(Math.max(1, x.length - 1));
        for (double scatter : SCATTERS) {
            double[][][] costs = new double[m][m][];
            for (int a = 0; a < m; a++) {
                for (int b = a + 1; b < m; b++) {
                    costs[a][b] = costs(pieces[a][b], Math.max(scatter, sample.systematic()));
                }
            }
            BestPartition found = BestPartition.of(costs, mostBad, further);
            double prior = Math.pow((Math.log(scatter) - USUAL_SCATTER) / SCATTER_STD, 2);
            double cost = found.cost() + prior;
            single = Math.min(single, found.single() + prior);
            if (cost < best) {
                best = cost;
                chosen = pieces(found, pieces);
            }
        }
        return described(chosen, single - best > BEYOND_DOUBT);
    }

    /** Minus twice the logarithm of the probability of each piece at a scatter; infinite where it is none. */
    private static double[] costs(Piece[] pieces, double scatter) {
        double[] costs = new double[pieces.length];
        for (int bad = 0; bad < costs.length; bad++) {
            costs[bad] = pieces[bad] == null ? Double.POSITIVE_INFINITY : pieces[bad].cost(scatter);
        }
        return costs;
    }

    private static Piece[] pieces(BestPartition found, Piece[][][] all) {
        Piece[] chosen = new Piece[found.bad().length];
        for (int k = 0; k < chosen.length; k++) {
            chosen[k] = all[found.ends()[k]][found.ends()[k + 1]][found.bad()[k]];
        }
        return chosen;
    }

    private Found described(Piece[] chosen, boolean several) {
        boolean[] bad = new boolean[x.length];
        double[] off = new double[x.length];
        int count = 0;
        for (Piece piece : chosen) {
            for (int i : piece.bad()) {
                bad[i] = true;
                off[i] = y[i] - piece.line().at(x[i]);
                count++;
            }
        }
        for (int k = 0; k < chosen.length && chosen.length > 1; k++) {
            Piece piece = chosen[k];
            Line beside = chosen[k == 0 ? 1 : k - 1].line();
            int good = piece.to() - piece.from() - piece.bad().length;
            // two points a little off their neighbours' law are no regime
            if (good < 3 && count + good <= mostBad && near(piece, beside)) {
                for (int i = piece.from(); i < piece.to(); i++) {
                    bad[i] = true;
                    off[i] = y[i] - beside.at(x[i]);
                }
                count += good;
            }
        }
        int[] places = IntStream.range(0, x.length).filter(i -> bad[i]).toArray();
        return new Found(places, loneEnd(bad, off, false), loneEnd(bad, off, true), several ? slow(chosen, bad) : 0);
    }

    /** Good points below the first gap across which the rate rises by more than a bad firing is off. */
    private int slow(Piece[] chosen, boolean[] bad) {
        for (int k = 1; k < chosen.length; k++) {
            double at = (x[chosen[k].from() - 1] + x[chosen[k].from()]) / 2;
            if (chosen[k].line().at(at) - chosen[k - 1].line().at(at) > USUAL) {
                return (int) IntStream.range(0, chosen[k].from())
                        .filter(i -> !bad[i])
                        .count();
            }
        }
        return 0;
    }

    private boolean near(Piece piece, Line line) {
        return IntStream.range(piece.from(), piece.to()).allMatch(i -> Math.abs(y[i] - line.at(x[i])) < USUAL);
    }

    /** How many at the low end are slower, or at the high end faster, and might be a regime of their own. */
    private static int loneEnd(boolean[] bad, double[] off, boolean high) {
        int n = bad.length;
        int run = 0;
        while (run < n
                && bad[high ? n - 1 - run : run]
                && (high ? off[n - 1 - run] : -off[run]) > TrimmedPieces.LEAST) {
            run++;
        }
        return run;
    }
}
