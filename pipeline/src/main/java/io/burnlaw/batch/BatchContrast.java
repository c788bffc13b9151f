package io.burnlaw.batch;

import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Two formulations, each cast in batches, in one mixed model.
 *
 * <pre>
 *     ln r = L + n · x + C · (d + s · x) + b + e      C = 1 for the second, else 0      b ~ N(0, between²)
 * </pre>
 *
 * Both have the same scatter between batches, so a formulation that was cast once uses the scatter of the other's
 * batches. Covariance and degrees of freedom are those of Kenward and Roger (1997).
 */
public final class BatchContrast {

    /** With which errors of the pressure count [1]: common practice, no source. */
    private static final double USUAL_SLOPE = 0.4;

    private final MixedModel.Fit fit;

    private BatchContrast(MixedModel.Fit fit) {
        this.fit = fit;
    }

    /**
     * Fits both together.
     *
     * @param first  points of one formulation, of one batch or more
     * @param second points of the other; of one batch or more, and three in all
     * @return the difference between them
     * @throws IllegalArgumentException if there are fewer than three batches, or no firing more than batches and exponents
     */
    public static BatchContrast of(List<BatchPoint> first, List<BatchPoint> second) {
        List<FitPoint> all = Stream.concat(first.stream(), second.stream())
                .map(BatchPoint::point)
                .toList();
        ToDoubleFunction<FitPoint> known = BatchFit.known(all, USUAL_SLOPE);
        List<MixedModel.Group> groups = new ArrayList<>(groups(first, 0, known));
        groups.addAll(groups(second, 1, known));
        int count = groups.stream().mapToInt(group -> group.y().length).sum();
        if (groups.size() < 3 || count < groups.size() + 3) {
            throw new IllegalArgumentException(groups.size() + " batches with " + count + " firings");
        }
        return new BatchContrast(MixedModel.fit(groups, new double[] {1e-4, 1e-4}));
    }

    /**
     * How many firings more than batches and exponents there must be.
     *
     * @param first  points of one formulation
     * @param second points of the other
     * @return whether the two can be fitted together
     */
    public static boolean possible(List<BatchPoint> first, List<BatchPoint> second) {
        int batches = BatchFit.firings(first).size() + BatchFit.firings(second).size();
        int count = firings(first) + firings(second);
        return batches >= 3 && count >= batches + 3;
    }

    private static int firings(List<BatchPoint> points) {
        return BatchFit.firings(points).values().stream().mapToInt(List::size).sum();
    }

    private static List<MixedModel.Group> groups(
            List<BatchPoint> points, int second, ToDoubleFunction<FitPoint> known) {
        List<MixedModel.Group> groups = new ArrayList<>();
        TreeMap<String, List<FitPoint>> batches = BatchFit.firings(points);
        for (Map.Entry<String, List<FitPoint>> batch : batches.entrySet()) {
            int n = batch.getValue().size();
            RealMatrix fixed = new Array2DRowRealMatrix(n, 4);
            double[] ones = new double[n];
            Arrays.fill(ones, 1);
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                FitPoint point = batch.getValue().get(i);
                double x = StrictMath.log(point.pressure());
                fixed.setRow(i, new double[] {1, x, second, second * x});
                y[i] = StrictMath.log(point.rate());
            }
            groups.add(new MixedModel.Group(
                    fixed,
                    new double[][] {ones},
                    y,
                    ones,
                    batch.getValue().stream().mapToDouble(known).toArray()));
        }
        return groups;
    }

    /**
     * Logarithm of the second rate over the first.
     *
     * @param lnPressure natural logarithm of the pressure in Pa
     * @return [1]
     */
    public double difference(double lnPressure) {
        return fit.beta().dotProduct(at(lnPressure));
    }

    /**
     * Its standard uncertainty.
     *
     * @param lnPressure natural logarithm of the pressure in Pa
     * @return [1]
     */
    public double std(double lnPressure) {
        RealVector contrast = at(lnPressure);
        return Math.sqrt(fit.adjusted().operate(contrast).dotProduct(contrast));
    }

    /**
     * Degrees of freedom of the difference.
     *
     * @param lnPressure natural logarithm of the pressure in Pa
     * @return [1]
     */
    public double freedom(double lnPressure) {
        return fit.freedom(at(lnPressure), new double[fit.theta().length]);
    }

    /** {@return second exponent less the first [1]} */
    public double exponentDifference() {
        return fit.beta().getEntry(3);
    }

    /** {@return its standard uncertainty [1]} */
    public double exponentStd() {
        return Math.sqrt(fit.adjusted().getEntry(3, 3));
    }

    /** {@return degrees of freedom of the exponents' difference [1]} */
    public double exponentFreedom() {
        return fit.freedom(new ArrayRealVector(new double[] {0, 0, 0, 1}), new double[fit.theta().length]);
    }

    /** {@return the Wald statistic of one law for both, over its two restrictions: an F [1]} */
    public double oneLaw() {
        RealMatrix both = fit.adjusted().getSubMatrix(2, 3, 2, 3);
        RealVector apart = fit.beta().getSubVector(2, 2);
        return new LUDecomposition(both).getSolver().solve(apart).dotProduct(apart) / 2;
    }

    /** {@return relative standard deviation of firings within a batch [1]} */
    public double withinStd() {
        return Math.sqrt(fit.theta()[0]);
    }

    private static RealVector at(double lnPressure) {
        return new ArrayRealVector(new double[] {0, 0, 1, lnPressure});
    }
}
