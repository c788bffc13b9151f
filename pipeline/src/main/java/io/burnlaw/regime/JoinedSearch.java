package io.burnlaw.regime;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Laws that meet at their breaks: y = α + β·x + Σ δ_j·max(0, x − c_j), least squares over all places c of the breaks on
 * a grid. With each hinge made orthogonal to the single line, the sum of squares that a set S of hinges takes off is
 * b_S'·G_S⁻¹·b_S, with G their fixed inner products (inverted once) and b their products with y. Those are the products
 * of the bare hinges with what the line leaves of y, and follow from running sums from the far end, so that a simulated
 * campaign costs a few operations a point and a set (Feder 1975 for the model; the algebra is the partitioned
 * regression of Frisch and Waugh 1933). {@link JoinedFit} then finds the exact optimum near the best set.
 */
final class JoinedSearch {

    /** Places in a gap between neighbouring points, for one break. */
    private static final int FINE = 4;

    /** Most places, by the number of breaks: sets of them number some thousands at most. */
    private static final int[] MOST = {0, 160, 60, 30, 22};

    /** A likelihood smaller than the largest by e to this power does not count in a mean. */
    private static final double NEGLIGIBLE = 25;

    private final int size;
    private final double[] w;
    private final double[] x;
    private final double sw;
    private final double sxx;
    private final Knots[] byCount;

    /**
     * Places, and the sets of hinges at them, one set after the other; inverses as
     * {@link SymmetricInverse} packs them.
     */
    private record Knots(double[] places, int breaks, int[] sets, double[] inverses) {

        int count() {
            return sets.length / breaks;
        }

        /** What a set of hinges takes off the sum of squares. */
        double gain(int set, double[] b) {
            double sum = 0;
            int at = set * breaks * (breaks + 1) / 2;
            int first = set * breaks;
            for (int i = 0; i < breaks; i++) {
                double bi = b[sets[first + i]];
                for (int j = 0; j <= i; j++) {
                    sum += inverses[at++] * bi * b[sets[first + j]];
                }
            }
            return sum;
        }
    }

    /**
     * Grid optima of each count.
     *
     * @param rss    weighted sum of squares for 1, 2, … laws; infinite where a count is impossible
     * @param breaks places of the breaks, by count
     */
    record Best(double[] rss, double[][] breaks) {}

    JoinedSearch(Sample sample, int most, int minimumPoints) {
        size = sample.size();
        x = sample.xs();
        w = sample.ws();
        Line all = Line.through(x, x, w, 0, size);
        sw = all.weight();
        sxx = all.spread();
        byCount = new Knots[most];
        for (int k = 2; k <= most; k++) {
            double[] places = places(sample, minimumPoints, k == 2 ? FINE : 2, MOST[k - 1]);
            byCount[k - 1] = knots(sample, places, k - 1, minimumPoints, all.middle());
        }
    }

    private static double[] places(Sample sample, int minimumPoints, int perGap, int most) {
        List<Double> places = new ArrayList<>();
        int n = sample.size();
        if (n < 2 * minimumPoints) {
            return new double[0];
        }
        int first = minimumPoints - 1;
        int last = n - minimumPoints;
        for (int i = first; i <= last; i++) {
            double here = sample.x(i);
            if (places.isEmpty() || here - places.get(places.size() - 1) > 1e-9) {
                places.add(here);
            }
            for (int j = 1; j < perGap && i < last && sample.x(i + 1) - here > 1e-9; j++) {
                places.add(here + (sample.x(i + 1) - here) * j / perGap);
            }
        }
        if (places.size() <= most) {
            return places.stream().mapToDouble(d -> d).toArray();
        }
        double[] kept = new double[most];
        for (int i = 0; i < most; i++) {
            kept[i] = places.get((int) ((i + 0.5) * places.size() / most));
        }
        return kept;
    }

    private Knots knots(Sample sample, double[] places, int breaks, int minimumPoints, double middle) {
        double[][] hinges = new double[places.length][];
        for (int m = 0; m < places.length; m++) {
            hinges[m] = orthogonal(places[m], middle);
        }
        double[][] gram = new double[places.length][places.length];
        for (int a = 0; a < places.length; a++) {
            for (int b = 0; b <= a; b++) {
                double sum = 0;
                for (int i = 0; i < size; i++) {
                    sum += w[i] * hinges[a][i] * hinges[b][i];
                }
                gram[a][b] = sum;
                gram[b][a] = sum;
            }
        }
        List<int[]> sets = new ArrayList<>();
        List<double[]> inverses = new ArrayList<>();
        gather(sample, places, gram, new int[breaks], 0, 0, minimumPoints, sets, inverses);
        return new Knots(
                places,
                breaks,
                sets.stream().flatMapToInt(Arrays::stream).toArray(),
                inverses.stream().flatMapToDouble(Arrays::stream).toArray());
    }

    private double[] orthogonal(double place, double middle) {
        double[] hinge = new double[size];
        double mean = 0;
        double along = 0;
        for (int i = 0; i < size; i++) {
            hinge[i] = Math.max(0, x[i] - place);
            mean += w[i] * hinge[i] / sw;
            along += w[i] * hinge[i] * (x[i] - middle) / sxx;
        }
        for (int i = 0; i < size; i++) {
            hinge[i] -= mean + along * (x[i] - middle);
        }
        return hinge;
    }

    private static void gather(
            Sample sample,
            double[] places,
            double[][] gram,
            int[] set,
            int depth,
            int from,
            int minimumPoints,
            List<int[]> sets,
            List<double[]> inverses) {
        if (depth == set.length) {
            double[] breaks = Arrays.stream(set).mapToDouble(m -> places[m]).toArray();
            if (carries(sample, breaks, minimumPoints)) {
                SymmetricInverse.of(gram, set).ifPresent(inverse -> {
                    sets.add(set.clone());
                    inverses.add(inverse);
                });
            }
            return;
        }
        for (int m = from; m < places.length; m++) {
            set[depth] = m;
            gather(sample, places, gram, set, depth + 1, m + 1, minimumPoints, sets, inverses);
        }
    }

    /** Whether each law between these breaks has points enough; a point at a break counts on both sides. */
    static boolean carries(Sample sample, double[] breaks, int minimumPoints) {
        for (int j = 0; j <= breaks.length; j++) {
            int from = j == 0 ? 0 : firstFrom(sample, breaks[j - 1] - 1e-9);
            int to = j == breaks.length ? sample.size() : firstFrom(sample, Math.nextUp(breaks[j] + 1e-9));
            if (!sample.carries(from, to, minimumPoints)) {
                return false;
            }
        }
        return true;
    }

    /** Index of the first point at or above a place; the number of points where there is none. */
    private static int firstFrom(Sample sample, double place) {
        int low = 0;
        int high = sample.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sample.x(middle) < place) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** {@return the least sum of squares on the grid for so many laws; infinite where there can't be so many} */
    double rss(double[] y, int count) {
        Line line = Line.through(x, y, w, 0, size);
        double single = line.rss();
        if (count == 1) {
            return single;
        }
        Knots knots = byCount[count - 1];
        double[] b = products(y, line, knots);
        double most = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < knots.count(); s++) {
            most = Math.max(most, knots.gain(s, b));
        }
        return knots.count() == 0 ? Double.POSITIVE_INFINITY : Math.max(0, single - most);
    }

    /**
     * The likelihood ratio against a sum of squares, averaged over the places of the breaks: the mean of
     * (fewer / rss)^(n/2), in logarithms. It sees faint changes better than its largest value does (Andrews and
     * Ploberger 1994).
     *
     * @param count of laws, at least two
     * @param fewer sum of squares with fewer laws
     * @return the logarithm; minus infinity where there can't be so many laws
     */
    double meanLikelihoodRatio(double[] y, int count, double fewer) {
        Knots knots = byCount[count - 1];
        if (knots.count() == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        Line line = Line.through(x, y, w, 0, size);
        double single = line.rss();
        double[] b = products(y, line, knots);
        double[] rss = new double[knots.count()];
        double least = Double.POSITIVE_INFINITY;
        for (int s = 0; s < rss.length; s++) {
            rss[s] = Math.max(Double.MIN_NORMAL, single - knots.gain(s, b));
            least = Math.min(least, rss[s]);
        }
        double sum = 0;
        double negligible = least * Math.exp(2 * NEGLIGIBLE / size);
        for (double each : rss) {
            sum += each < negligible ? Math.exp(0.5 * size * Math.log(least / each)) : 0;
        }
        return 0.5 * size * Math.log(fewer / least) + Math.log(sum / rss.length);
    }

    Best best(double[] y) {
        double[][] breaks = new double[byCount.length][0];
        double[] rss = new double[byCount.length];
        for (int k = 1; k <= byCount.length; k++) {
            rss[k - 1] = rss(y, k);
            if (k > 1 && byCount[k - 1].count() > 0) {
                breaks[k - 1] = places(byCount[k - 1], y);
            }
        }
        return new Best(rss, breaks);
    }

    private double[] places(Knots knots, double[] y) {
        double[] b = products(y, Line.through(x, y, w, 0, size), knots);
        int at = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < knots.count(); s++) {
            double gain = knots.gain(s, b);
            if (gain > most) {
                most = gain;
                at = s;
            }
        }
        double[] found = new double[knots.breaks];
        for (int j = 0; j < found.length; j++) {
            found[j] = knots.places[knots.sets[at * knots.breaks + j]];
        }
        return found;
    }

    private double[] products(double[] y, Line line, Knots knots) {
        double[] b = new double[knots.places.length];
        double sum = 0;
        double sumX = 0;
        int i = size - 1;
        for (int m = b.length - 1; m >= 0; m--) {
            for (; i >= 0 && x[i] > knots.places[m]; i--) {
                double left = w[i] * (y[i] - line.at(x[i]));
                sum += left;
                sumX += left * x[i];
            }
            b[m] = sumX - knots.places[m] * sum;
        }
        return b;
    }
}
