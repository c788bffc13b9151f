package io.burnlaw.regime;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Points as the search sees them: x and y over weights w, in the order of x. For rate-pressure points x = ln P [ln Pa]
 * about its middle and y = ln r [ln(m/s)]; the weights have the mean 1.
 */
final class Sample {

    /** Relative variance of a firing about its law, against which a less certain one is weighed [1]: 1 %, common practice. */
    private static final double USUAL_SCATTER = 1e-4;

    private final List<FitPoint> points;
    private final double centre;
    private final double[] x;
    private final double[] y;
    private final double[] w;
    private final int[] cluster;
    private final int[] order;
    private final int clusters;
    private final double systematic;
    private final OptionalDouble knownScatter;

    private Sample(
            List<FitPoint> points,
            double centre,
            double[] x,
            double[] y,
            double[] w,
            int[] cluster,
            int[] order,
            double systematic,
            OptionalDouble knownScatter) {
        this.points = points;
        this.centre = centre;
        this.x = x;
        this.y = y;
        this.w = w;
        this.cluster = cluster;
        this.order = order;
        int most = -1;
        for (int c : cluster) {
            most = Math.max(most, c);
        }
        this.clusters = most + 1;
        this.systematic = systematic;
        this.knownScatter = knownScatter;
    }

    /**
     * Rate-pressure points in logarithms.
     *
     * @param points    at least one
     * @param weighting proportional: equal weights; constant: as r²; measured: as the inverse of the effective
     *                  variance u(r)²/r² + (n·u(P)/P)² with n from the unweighted line
     * @param floor     least systematic error [1]
     */
    static Sample of(List<FitPoint> points, Weighting weighting, double floor) {
        List<FitPoint> sorted = new ArrayList<>(points);
        sorted.sort(Comparator.comparingDouble(FitPoint::pressure).thenComparing(FitPoint::id));
        int n = sorted.size();
        double[] x = new double[n];
        double[] y = new double[n];
        int[] cluster = new int[n];
        int[] order = new int[n];
        Map<FitPoint, Integer> handedIn = new IdentityHashMap<>();
        for (int i = 0; i < n; i++) {
            handedIn.putIfAbsent(points.get(i), i);
        }
        Map<String, Integer> numbers = new LinkedHashMap<>();
        double centre = 0;
        for (int i = 0; i < n; i++) {
            FitPoint point = sorted.get(i);
            x[i] = StrictMath.log(point.pressure());
            y[i] = StrictMath.log(point.rate());
            cluster[i] = numbers.computeIfAbsent(point.cluster(), c -> numbers.size());
            order[i] = handedIn.get(point);
            centre += x[i] / n;
        }
        double square = bending(sorted);
        for (int i = 0; i < n; i++) {
            x[i] -= centre;
        }
        double[] w = weights(sorted, x, y, weighting);
        double mean = java.util.Arrays.stream(w).average().orElse(1);
        boolean usable = mean > 0 && mean < Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            w[i] = usable ? w[i] / mean : 1;
        }
        return new Sample(
                sorted,
                centre,
                x,
                y,
                w,
                cluster,
                order,
                Math.max(floor, Math.sqrt(square)),
                usable && weighting == Weighting.MEASURED
                        ? OptionalDouble.of(1 / Math.sqrt(mean))
                        : OptionalDouble.empty());
    }

    /**
     * Mean square of the errors that firings share as far as they may bend a law [1]. Of reduced records all may; what
     * timed firings share (the eye that timed them, c*) moves them alike, and bends only by what it differs among points.
     */
    private static double bending(List<FitPoint> points) {
        double reduced = 0;
        double timed = 0;
        double square = 0;
        for (FitPoint point : points) {
            double systematic = point.systematic() / Math.sqrt(points.size());
            reduced += point.lessCertain() ? 0 : systematic * systematic;
            square += point.lessCertain() ? systematic * systematic : 0;
            timed += point.lessCertain() ? systematic / Math.sqrt(points.size()) : 0;
        }
        return reduced + Math.max(0, square - timed * timed);
    }

    /** A general regression sample of equal weights, each point on its own; x ascending. */
    static Sample of(double[] x, double[] y) {
        int n = x.length;
        double[] w = new double[n];
        int[] cluster = new int[n];
        for (int i = 0; i < n; i++) {
            w[i] = 1;
            cluster[i] = i;
        }
        return new Sample(List.of(), 0, x.clone(), y.clone(), w, cluster, cluster.clone(), 0, OptionalDouble.empty());
    }

    private static double[] weights(List<FitPoint> points, double[] x, double[] y, Weighting weighting) {
        int n = points.size();
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1);
        double slope = n < 2 ? 0 : Line.through(x, y, ones, 0, n).slope();
        double[] w = new double[n];
        for (int i = 0; i < n; i++) {
            FitPoint p = points.get(i);
            double variance = Math.pow(p.acrossStd(slope), 2) + Math.pow(slope * p.pressureStd() / p.pressure(), 2);
            double sure = p.lessCertain() ? USUAL_SCATTER / (USUAL_SCATTER + variance) : 1;
            w[i] = switch (weighting) {
                case PROPORTIONAL -> sure;
                case CONSTANT -> sure * p.rate() * p.rate();
                case MEASURED -> 1 / variance;
            };
        }
        return w;
    }

    int size() {
        return x.length;
    }

    double x(int i) {
        return x[i];
    }

    double w(int i) {
        return w[i];
    }

    int cluster(int i) {
        return cluster[i];
    }

    /** Place of a point in the list that was handed in: along one burn, its place in time. */
    int order(int i) {
        return order[i];
    }

    int clusters() {
        return clusters;
    }

    double systematic() {
        return systematic;
    }

    FitPoint point(int i) {
        return points.get(i);
    }

    double pressure(double at) {
        return StrictMath.exp(at + centre);
    }

    double position(double pressure) {
        return StrictMath.log(pressure) - centre;
    }

    /** {@return the relative scatter of a point of weight 1, by the uncertainties that the points carry} */
    OptionalDouble knownScatter() {
        return knownScatter;
    }

    double[] xs() {
        return x.clone();
    }

    double[] ys() {
        return y.clone();
    }

    double[] ws() {
        return w.clone();
    }

    /** {@return the places i at which x changes from i - 1 to i} */
    int[] steps() {
        return java.util.stream.IntStream.range(1, x.length)
                .filter(i -> x[i] - x[i - 1] > 1e-9)
                .toArray();
    }

    /** Whether points from..to (exclusive) may carry a law of their own. */
    boolean carries(int from, int to, int minimumPoints) {
        if (to - from < minimumPoints || x[to - 1] - x[from] < 1e-6) {
            return false;
        }
        if (clusters < 4) {
            return true;
        }
        for (int i = from + 1; i < to; i++) {
            if (cluster[i] != cluster[from]) {
                return true;
            }
        }
        return false;
    }
}
