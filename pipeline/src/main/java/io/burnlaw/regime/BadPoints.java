package io.burnlaw.regime;

import io.burnlaw.trace.QuickSelect;
import java.util.Arrays;
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

    private static final double CHANCE = 0.05;
    private static final double CHANCE_WITH_CAUTION = 0.25;

    /** A bad firing is usually off by less than this factor [ln], nearly always by less than the second. */
    static final double USUAL = Math.log(2.2);

    private static final double WIDEST = Math.log(10);

    /** What is off by less is scatter [ln]. */
    private static final double LEAST = Math.log(1.1);

    /** Reduced firings scatter about a law by 2 %, within a factor of two [ln]. */
    private static final double USUAL_SCATTER = Math.log(0.02);

    private static final double SCATTER_STD = Math.log(2);

    private static final double[] SCATTERS = {0.005, 0.008, 0.013, 0.02, 0.03, 0.045, 0.07, 0.1, 0.15, 0.25};
    private static final double USUAL_EXPONENT = 0.4;
    private static final double EXPONENT_STD = 0.5;

    /** Range of ln r in which the level of a law may lie: a factor of 25. */
    private static final double LEVELS = Math.log(25);

    /** Odds of 20 to 1, on the scale of the costs. */
    private static final double BEYOND_DOUBT = 2 * Math.log(20);

    private static final double BREAK_ODDS = Math.log(6);

    /** Two points may come from a regime of which the others are bad. */
    private static final int LEAST_GOOD = 2;

    private static final int LEAST_POINTS = 5;
    private static final int MOST_POINTS = 400;
    private static final int MOST_EDGES = 26;
    private static final int MOST_LINES = 80;

    private final Sample sample;
    private final double[] x;
    private final double[] y;
    private final double[] w;
    private final double[] lnW;
    private final double[] chance;
    private final double[] lnGood;
    private final int[] edges;
    private final int mostBad;

    /**
     * A piece with so many bad points: its line, and what its probability needs.
     *
     * @param odds minus twice the logarithm of the probability of the bad points where they lie, and of the others to be
     *             good; infinite where a bad point is none
     */
    private record Piece(int from, int to, Line line, double lnWeights, int[] bad, double odds) {}

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
        w = sample.ws();
        lnW = Arrays.stream(w).map(Math::log).toArray();
        chance = new double[x.length];
        for (int i = 0; i < chance.length; i++) {
            chance[i] = cautioned.contains(sample.point(i).id()) ? CHANCE_WITH_CAUTION : CHANCE;
        }
        lnGood = Arrays.stream(chance).map(each -> 2 * Math.log(1 - each)).toArray();
        mostBad = x.length / 4;
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
            pieces[at / m][at % m] = pieces(edges[at / m], edges[at % m]);
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

    /** By the number of bad points, the line with the least sum of squares of the others; null where there is none. */
    private Piece[] pieces(int from, int to) {
        int n = to - from;
        int most = Math.min(mostBad, n - LEAST_GOOD);
        double[] least = new double[mostBad + 1];
        double[] slopes = new double[mostBad + 1];
        double[] levels = new double[mostBad + 1];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        int pairs = n * (n - 1) / 2;
        int stride = Math.max(1, pairs / MOST_LINES);
        int pair = 0;
        for (int i = from; i < to && most >= 0; i++) {
            for (int j = i + 1; j < to; j++) {
                if (pair++ % stride != 0 || x[j] - x[i] < 1e-6) {
                    continue;
                }
                double slope = (y[j] - y[i]) / (x[j] - x[i]);
                double level = y[i] - slope * x[i];
                double[] sorted = squares(from, to, 0, level, slope);
                Arrays.sort(sorted);
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += sorted[k];
                    int bad = n - 1 - k;
                    if (bad <= most && sum < least[bad]) {
                        least[bad] = sum;
                        slopes[bad] = slope;
                        levels[bad] = level;
                    }
                }
            }
        }
        Piece[] pieces = new Piece[mostBad + 1];
        for (int bad = 0; bad <= most; bad++) {
            if (least[bad] < Double.POSITIVE_INFINITY) {
                pieces[bad] = settled(from, to, farthest(squares(from, to, 0, levels[bad], slopes[bad]), bad));
            }
        }
        return pieces;
    }

    /** Weighted squares of the distances from a line. */
    private double[] squares(int from, int to, double middle, double level, double slope) {
        double[] squares = new double[to - from];
        for (int k = from; k < to; k++) {
            double off = y[k] - (level + slope * (x[k] - middle));
            squares[k - from] = w[k] * (off * off);
        }
        return squares;
    }

    /** The places of the largest values, ascending; of equal ones the last. */
    private static int[] farthest(double[] values, int count) {
        double least =
                count == 0 ? Double.POSITIVE_INFINITY : QuickSelect.at(values, 0, values.length, values.length - count);
        int[] places = new int[count];
        int left = count;
        int equal = count
                - (int) Arrays.stream(values).filter(value -> value > least).count();
        for (int i = values.length - 1; i >= 0 && left > 0; i--) {
            if (values[i] > least || values[i] == least && equal-- > 0) {
                places[--left] = i;
            }
        }
        return places;
    }

    /** The line without the points at some places, counted from the first of the piece. */
    private Line without(int from, int to, int[] bad) {
        double[] weights = Arrays.copyOfRange(w, from, to);
        for (int place : bad) {
            weights[place] = 0;
        }
        return Line.through(
                Arrays.copyOfRange(x, from, to), Arrays.copyOfRange(y, from, to), weights, 0, weights.length);
    }

    /** The farthest from the line are the bad ones: until that holds for the line without them. */
    private Piece settled(int from, int to, int[] start) {
        int[] bad = start;
        Line line = without(from, to, bad);
        for (int turn = 0; turn < 5; turn++) {
            int[] next = farthest(squares(from, to, line.middle(), line.level(), line.slope()), bad.length);
            Line other = without(from, to, next);
            if (!(other.rss() < line.rss() - 1e-15)) {
                break;
            }
            bad = next;
            line = other;
        }
        int[] places = Arrays.stream(bad).map(place -> from + place).toArray();
        double ln = IntStream.range(from, to)
                .filter(i -> Arrays.binarySearch(places, i) < 0)
                .mapToDouble(i -> lnW[i])
                .sum();
        return new Piece(from, to, line, ln, places, odds(from, to, line, places));
    }

    private double odds(int from, int to, Line line, int[] bad) {
        double odds = 0;
        int next = 0;
        for (int i = from; i < to; i++) {
            if (next < bad.length && bad[next] == i) {
                next++;
                double off = Math.abs(y[i] - line.at(x[i]));
                if (off < LEAST) {
                    return Double.POSITIVE_INFINITY;
                }
                double density = (off < USUAL ? 0.9 / (2 * USUAL) : 0) + 0.1 / (2 * WIDEST);
                odds -= 2 * Math.log(chance[i] * density);
            } else {
                odds -= lnGood[i];
            }
        }
        return odds;
    }

    /** Minus twice the logarithm of the probability of each piece at a scatter; infinite where it is none. */
    private static double[] costs(Piece[] pieces, double scatter) {
        double[] costs = new double[pieces.length];
        for (int bad = 0; bad < costs.length; bad++) {
            costs[bad] = pieces[bad] == null ? Double.POSITIVE_INFINITY : cost(pieces[bad], scatter);
        }
        return costs;
    }

    private static double cost(Piece piece, double scatter) {
        Line line = piece.line;
        int good = piece.to - piece.from - piece.bad.length;
        double slopeVariance = scatter * scatter / line.spread();
        double prior = EXPONENT_STD * EXPONENT_STD;
        if (!(line.spread() > 1e-6)) {
            return Double.POSITIVE_INFINITY;
        }
        return line.rss() / (scatter * scatter)
                + good * (2 * Math.log(scatter) + Math.log(2 * Math.PI))
                - piece.lnWeights
                + 2 * Math.log(LEVELS / (scatter * Math.sqrt(2 * Math.PI / line.weight())))
                + Math.log((prior + slopeVariance) / slopeVariance)
                + Math.pow(line.slope() - USUAL_EXPONENT, 2) / (prior + slopeVariance)
                + piece.odds;
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
            for (int i : piece.bad) {
                bad[i] = true;
                off[i] = y[i] - piece.line.at(x[i]);
                count++;
            }
        }
        for (int k = 0; k < chosen.length && chosen.length > 1; k++) {
            Piece piece = chosen[k];
            Line beside = chosen[k == 0 ? 1 : k - 1].line;
            int good = piece.to - piece.from - piece.bad.length;
            // two points a little off their neighbours' law are no regime
            if (good < 3 && count + good <= mostBad && near(piece, beside)) {
                for (int i = piece.from; i < piece.to; i++) {
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
            double at = (x[chosen[k].from - 1] + x[chosen[k].from]) / 2;
            if (chosen[k].line.at(at) - chosen[k - 1].line.at(at) > USUAL) {
                return (int)
                        IntStream.range(0, chosen[k].from).filter(i -> !bad[i]).count();
            }
        }
        return 0;
    }

    private boolean near(Piece piece, Line line) {
        return IntStream.range(piece.from, piece.to).allMatch(i -> Math.abs(y[i] - line.at(x[i])) < USUAL);
    }

    /** How many at the low end are slower, or at the high end faster, and might be a regime of their own. */
    private static int loneEnd(boolean[] bad, double[] off, boolean high) {
        int n = bad.length;
        int run = 0;
        while (run < n && bad[high ? n - 1 - run : run] && (high ? off[n - 1 - run] : -off[run]) > LEAST) {
            run++;
        }
        return run;
    }
}
