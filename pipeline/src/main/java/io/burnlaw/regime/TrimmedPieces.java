package io.burnlaw.regime;

import io.burnlaw.trace.QuickSelect;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Straight pieces of a sample with some of their points left out: the line of each from the least trimmed squares over
 * lines through two of its points (Rousseeuw 1984), the farthest points left out until the line without them agrees.
 */
final class TrimmedPieces {

    private static final double CHANCE = 0.05;

    private static final double CHANCE_WITH_CAUTION = 0.25;

    private static final double WIDEST = Math.log(10);

    /** What is off by less is scatter [ln]. */
    static final double LEAST = Math.log(1.1);

    private static final double USUAL_EXPONENT = 0.4;

    private static final double EXPONENT_STD = 0.5;

    /** Range of ln r in which the level of a law may lie: a factor of 25. */
    private static final double LEVELS = Math.log(25);

    /** Two points may come from a regime of which the others are bad. */
    private static final int LEAST_GOOD = 2;

    private static final int MOST_LINES = 80;

    private final double[] x;
    private final double[] y;
    private final double[] w;
    private final double[] lnW;
    private final double[] chance;
    private final double[] lnGood;
    private final int mostBad;

    /**
     * A piece with so many bad points: its line, and what its probability needs.
     *
     * @param odds minus twice the logarithm of the probability of the bad points where they lie, and of the others to be
     *             good; infinite where a bad point is none
     */
    record Piece(int from, int to, Line line, double lnWeights, int[] bad, double odds) {

        /** Minus twice the logarithm of its probability at a scatter; infinite where it is none. */
        double cost(double scatter) {
            int good = to - from - bad.length;
            double slopeVariance = scatter * scatter / line.spread();
            double prior = EXPONENT_STD * EXPONENT_STD;
            if (!(line.spread() > 1e-6)) {
                return Double.POSITIVE_INFINITY;
            }
            return line.rss() / (scatter * scatter)
                    + good * (2 * Math.log(scatter) + Math.log(2 * Math.PI))
                    - lnWeights
                    + 2 * Math.log(LEVELS / (scatter * Math.sqrt(2 * Math.PI / line.weight())))
                    + Math.log((prior + slopeVariance) / slopeVariance)
                    + Math.pow(line.slope() - USUAL_EXPONENT, 2) / (prior + slopeVariance)
                    + odds;
        }
    }

    TrimmedPieces(Sample sample, Set<String> cautioned, int mostBad) {
        this.mostBad = mostBad;
        x = sample.xs();
        y = sample.ys();
        w = sample.ws();
        lnW = Arrays.stream(w).map(Math::log).toArray();
        chance = new double[x.length];
        for (int i = 0; i < chance.length; i++) {
            chance[i] = cautioned.contains(sample.point(i).id()) ? CHANCE_WITH_CAUTION : CHANCE;
        }
        lnGood = Arrays.stream(chance).map(each -> 2 * Math.log(1 - each)).toArray();
    }

    /** By the number of bad points, the line with the least sum of squares of the others; null where there is none. */
    Piece[] of(int from, int to) {
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
                double density = (off < BadPoints.USUAL ? 0.9 / (2 * BadPoints.USUAL) : 0) + 0.1 / (2 * WIDEST);
                odds -= 2 * Math.log(chance[i] * density);
            } else {
                odds -= lnGood[i];
            }
        }
        return odds;
    }
}
