package io.burnlaw.ratelaw;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Intervals from the profile of the sum of squares: a value belongs to the interval if the best law that has it is not
 * significantly worse than the best law of all.
 *
 * <pre>
 *     least S over the other parameter, value held  -  S at the minimum   ≤   q²
 * </pre>
 *
 * with S weighted by the points' variances and q the quantile of Student's t, or of the normal distribution where the
 * scatter is known. Between logarithms S is a parabola and the interval is that from the covariance, digit for digit.
 *
 * <p><b>Source.</b> Bates and Watts (1988), section 6.1.
 */
final class ProfileIntervals {

    private static final String ENDLESS =
            "the sum of squares stays below its limit however far one goes; more points, or points further apart, would end it";

    private final WeightedSolution solution;
    private final double limit;
    private final double level;
    private final double[] std;

    ProfileIntervals(WeightedSolution solution, double quantile, double level) {
        this.solution = solution;
        this.limit = solution.sumOfSquares() + quantile * quantile;
        this.level = level;
        std = new double[solution.x.length];
        for (int i = 0; i < std.length; i++) {
            std[i] = 1 / Math.sqrt(solution.weight(i));
        }
    }

    /** Of the exponent. */
    Interval exponent() {
        return between(
                value -> leastSum(x -> value * x, x -> 1, solution.parameters[0]),
                solution.parameters[1],
                Math.sqrt(solution.exponentVariance));
    }

    /** Of the logarithm of the rate, in the units of the solution, at x, the logarithm of a pressure in them. */
    Interval lnRate(double at) {
        double variance = solution.rateVariance + 2 * at * solution.covariance + at * at * solution.exponentVariance;
        return between(
                value -> leastSum(x -> value, x -> x - at, solution.parameters[1]),
                solution.parameters[0] + solution.parameters[1] * at,
                Math.sqrt(variance));
    }

    private Interval between(UnivariateFunction sum, double estimate, double step) {
        double low = end(sum, estimate, -step);
        double high = end(sum, estimate, step);
        return Double.isFinite(low) && Double.isFinite(high)
                ? new Interval.Estimated(
                        Math.min(low, estimate), Math.max(high, estimate), level, Interval.Method.PROFILE)
                : new Interval.NotEstimable(ENDLESS);
    }

    private double end(UnivariateFunction sum, double estimate, double step) {
        UnivariateFunction above = value -> sum.value(value) - limit;
        double inside = estimate;
        double outside = estimate + step;
        for (int round = 0; round < 60; round++) {
            double value = above.value(outside);
            if (!Double.isFinite(value)) {
                return Double.NaN;
            }
            if (value > 0) {
                double a = Math.min(inside, outside);
                double b = Math.max(inside, outside);
                return new BrentSolver(1e-13, 1e-13 * Math.abs(step)).solve(200, above, a, b);
            }
            inside = outside;
            outside += step * (1 + 0.5 * round);
        }
        return Double.NaN;
    }

    /** The least sum of squares over one parameter q of the law whose logarithm is fixed(x) + q·free(x). */
    private double leastSum(UnivariateFunction fixed, UnivariateFunction free, double start) {
        boolean power = solution.curve == Curve.POWER;
        Curve reduced = new Curve() {
            @Override
            public double value(double x, double[] p) {
                double ln = fixed.value(x) + p[0] * free.value(x);
                return power ? StrictMath.exp(ln) : ln;
            }

            @Override
            public double[] gradient(double x, double[] p) {
                return new double[] {power ? free.value(x) * value(x, p) : free.value(x)};
            }

            @Override
            public double slope(double x, double[] p) {
                throw new UnsupportedOperationException();
            }
        };
        return LeastSquares.minimize(reduced, solution.x, solution.y, std, new double[] {start})
                        instanceof LeastSquares.Minimum minimum
                ? minimum.sumOfSquares()
                : Double.NaN;
    }
}
