package io.burnlaw.regime;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * How points scatter about their law: each by itself (correlated from one to the next along a burn), each firing as a
 * whole, and all together by a smooth systematic error of the reduction that no repetition shows.
 *
 * <p>The last one is a random mixture of the second and third orthogonal polynomials in ln P, of stated root mean
 * square. A straight line cannot take it up, so that a curvature of that size looks ordinary to the tests.
 */
final class NoiseModel {

    private final Sample sample;
    private final double own;
    private final double firing;
    private final double serial;
    private final double systematic;
    private final List<int[]> groups;
    private final double[] second;
    private final double[] third;

    private NoiseModel(Sample sample, double own, double firing, double serial, double systematic) {
        this.sample = sample;
        this.own = own;
        this.firing = firing;
        this.serial = serial;
        this.systematic = systematic;
        this.groups = groups(sample);
        this.second = polynomial(sample, 2);
        this.third = polynomial(sample, 3);
    }

    /**
     * Scatter as the residuals of a fit show it.
     *
     * @param fit        a fit that leaves no trend
     * @param systematic root mean square of the smooth error [1]
     */
    static NoiseModel of(Sample sample, PiecewiseFit fit, double systematic) {
        int n = sample.size();
        int free = Math.max(1, n - fit.parameters());
        double scale = fit.rss() / free;
        if (sample.clusters() == n) {
            return new NoiseModel(sample, Math.sqrt(scale), 0, 0, systematic);
        }
        double[] y = sample.ys();
        double[] residual = new double[n];
        for (int i = 0; i < n; i++) {
            residual[i] = Math.sqrt(sample.w(i)) * (y[i] - fit.fitted()[i]);
        }
        return clustered(sample, residual, scale, systematic);
    }

    private static NoiseModel clustered(Sample sample, double[] residual, double scale, double systematic) {
        double within = 0;
        double product = 0;
        double square = 0;
        double between = 0;
        double inverseSizes = 0;
        int pairs = 0;
        List<int[]> groups = groups(sample);
        for (int[] group : groups) {
            double mean = 0;
            for (int i : group) {
                mean += residual[i] / group.length;
            }
            between += mean * mean;
            inverseSizes += 1.0 / group.length;
            double centre = groups.size() == 1 ? 0 : mean;
            for (int g = 0; g < group.length; g++) {
                double here = residual[group[g]] - centre;
                within += here * here;
                if (g > 0) {
                    product += here * (residual[group[g - 1]] - centre);
                    square += here * here;
                    pairs++;
                }
            }
        }
        int c = groups.size();
        int n = residual.length;
        double raw = pairs > 2 && square > 0 ? product / square : 0;
        // deviations from a group's own mean look less alike than they are, by about (1 + 3ρ)/m (Kendall 1954)
        double serial = Math.max(0, Math.min(0.95, raw + (c == 1 ? 0 : (1 + 3 * raw) * c / n)));
        if (c == 1) {
            return new NoiseModel(sample, Math.sqrt(scale), 0, serial, systematic);
        }
        double alike = 0;
        for (int[] group : groups) {
            alike += meanCorrelation(group.length, serial) * group.length / n;
        }
        double ownVariance = within / Math.max(1, n - c) * (1 - (double) c / n) / Math.max(0.05, 1 - alike);
        double meanVariance = between / Math.max(1, c - 2) - ownVariance * inverseSizes / c;
        double firingVariance = Math.max(0, Math.min(scale * n / Math.max(1, c), meanVariance));
        return new NoiseModel(sample, Math.sqrt(ownVariance), Math.sqrt(firingVariance), serial, systematic);
    }

    /** Mean over all pairs, a point with itself included, of serial^distance. */
    private static double meanCorrelation(int size, double serial) {
        double sum = size;
        double power = 1;
        for (int lag = 1; lag < size; lag++) {
            power *= serial;
            sum += 2 * (size - lag) * power;
        }
        return sum / ((double) size * size);
    }

    private static List<int[]> groups(Sample sample) {
        List<List<Integer>> lists = new ArrayList<>();
        for (int c = 0; c < sample.clusters(); c++) {
            lists.add(new ArrayList<>());
        }
        for (int i = 0; i < sample.size(); i++) {
            lists.get(sample.cluster(i)).add(i);
        }
        lists.forEach(list -> list.sort(Comparator.comparingInt(sample::order)));
        return lists.stream()
                .map(list -> list.stream().mapToInt(i -> i).toArray())
                .toList();
    }

    /** {@return how many independent points these are worth} */
    double effectivePoints() {
        double total = own * own + firing * firing;
        double points = 0;
        for (int[] group : groups) {
            int m = group.length;
            double mean = total > 0 ? (firing * firing + own * own * meanCorrelation(m, serial)) / total : 1;
            points += m == 1 ? 1 : 1 / Math.max(mean, 1.0 / m);
        }
        return points;
    }

    /** {@return relative scatter of one point [1]} */
    double scatter() {
        return Math.hypot(own, firing);
    }

    /** {@return indices of the points of each cluster: only errors within one have a covariance} */
    List<int[]> groups() {
        return groups;
    }

    /** {@return covariance of the errors of two points, the smooth error apart} */
    double covariance(int i, int j) {
        double root = Math.sqrt(sample.w(i) * sample.w(j));
        if (i == j) {
            return (own * own + firing * firing) / root;
        }
        if (sample.cluster(i) != sample.cluster(j)) {
            return 0;
        }
        int distance = 1;
        if (serial > 0) {
            int low = Math.min(sample.order(i), sample.order(j));
            int high = Math.max(sample.order(i), sample.order(j));
            distance = high - low;
        }
        return (firing * firing + own * own * Math.pow(serial, distance) * (serial > 0 ? 1 : 0)) / root;
    }

    /** Adds one draw of the errors to the values. */
    void addTo(double[] values, RandomGenerator random) {
        for (int[] group : groups) {
            double whole = firing > 0 ? firing * random.nextGaussian() : 0;
            double step = 0;
            for (int g = 0; g < group.length; g++) {
                double fresh = random.nextGaussian();
                step = g == 0 || serial == 0 ? fresh : serial * step + Math.sqrt(1 - serial * serial) * fresh;
                values[group[g]] += (whole + own * step) / Math.sqrt(sample.w(group[g]));
            }
        }
        if (systematic > 0) {
            double a = systematic * 0.8 * random.nextGaussian();
            double b = systematic * 0.6 * random.nextGaussian();
            for (int i = 0; i < values.length; i++) {
                values[i] += a * second[i] + b * third[i];
            }
        }
    }

    /** Orthogonal polynomial in x under the weights, of root mean square 1; zero where the points cannot carry it. */
    private static double[] polynomial(Sample sample, int degree) {
        int n = sample.size();
        double[][] basis = new double[degree + 1][n];
        double half = Math.max(1e-9, (sample.x(n - 1) - sample.x(0)) / 2);
        double centre = (sample.x(n - 1) + sample.x(0)) / 2;
        for (int d = 0; d <= degree; d++) {
            for (int i = 0; i < n; i++) {
                basis[d][i] = Math.pow((sample.x(i) - centre) / half, d);
            }
            for (int e = 0; e < d; e++) {
                double along = inner(sample, basis[d], basis[e]);
                for (int i = 0; i < n; i++) {
                    basis[d][i] -= along * basis[e][i];
                }
            }
            double norm = Math.sqrt(inner(sample, basis[d], basis[d]));
            for (int i = 0; i < n; i++) {
                basis[d][i] = norm > 1e-6 ? basis[d][i] / norm : 0;
            }
        }
        return basis[degree];
    }

    private static double inner(Sample sample, double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += sample.w(i) * a[i] * b[i] / a.length;
        }
        return sum;
    }
}
