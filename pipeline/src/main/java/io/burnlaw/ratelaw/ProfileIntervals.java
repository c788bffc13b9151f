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
            "the sum of squares never reaches its limit; more points, or points further apart, are needed";

    private static final int MOST_STEPS = 60;

    private final WeightedSolution solution;
    private final boolean power;
    private final double limit;
    private final double level;

    ProfileIntervals(WeightedSolution solution, double quantile, double level) {
        this.solution = solution;
        this.power = solution.curve == Curve.POWER;
        this.limit = solution.sumOfSquares() + quantile * quantile;
        this.level = level;
    }

    /** Of the exponent. */
    Interval exponent() {
        return between(this::leastSumAtExponent, solution.parameters[1], Math.sqrt(solution.exponentVariance));
    }

    /** Of the logarithm of the rate, in the units of the solution, at x, the logarithm of a pressure in them. */
    Interval lnRate(double at) {
        double variance = solution.rateVariance + 2 * at * solution.covariance + at * at * solution.exponentVariance;
        return between(
                value -> leastSumAtRate(value, at),
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
        for (int round = 0; round < MOST_STEPS; round++) {
            double value = above.value(outside);
            if (!Double.isFinite(value)) {
                return Double.NaN;
            }
            if (value > 0) {
                double a = Math.min(inside, outside);
                double b = Math.max(inside, outside);
                return new BrentSolver(1e-14, 1e-12 * Math.abs(step)).solve(200, above, a, b);
            }
            inside = outside;
            outside += step * (1 + 0.5 * round);
        }
        return Double.NaN;
    }

    /** The exponent held: the factor of the best law has a closed form in either scale. */
    private double leastSumAtExponent(double exponent) {
        double over = 0;
        double under = 0;
        for (int i = 0; i < solution.x.length; i++) {
            double w = solution.weight(i);
            double g = power ? StrictMath.exp(exponent * solution.x[i]) : 1;
            double value = power ? solution.y[i] : solution.y[i] - exponent * solution.x[i];
            over += w * g * value;
            under += w * g * g;
        }
        double best = over / under;
        double sum = 0;
        for (int i = 0; i < solution.x.length; i++) {
            double fitted = power ? best * StrictMath.exp(exponent * solution.x[i]) : best + exponent * solution.x[i];
            sum += solution.weight(i) * (solution.y[i] - fitted) * (solution.y[i] - fitted);
        }
        return sum;
    }

    /** The rate at one pressure held: Gauss-Newton over the exponent, which is one step between logarithms. */
    private double leastSumAtRate(double lnRate, double at) {
        double exponent = solution.parameters[1];
        double sum = sumAlong(lnRate, at, exponent);
        for (int step = 0; step < MOST_STEPS; step++) {
            double over = 0;
            double under = 0;
            for (int i = 0; i < solution.x.length; i++) {
                double d = solution.x[i] - at;
                double ln = lnRate + exponent * d;
                double fitted = power ? StrictMath.exp(ln) : ln;
                double g = power ? d * fitted : d;
                over += solution.weight(i) * g * (solution.y[i] - fitted);
                under += solution.weight(i) * g * g;
            }
            double change = over / under;
            double next = sumAlong(lnRate, at, exponent + change);
            for (int half = 0; half < MOST_STEPS && !(next <= sum); half++) {
                change /= 2;
                next = sumAlong(lnRate, at, exponent + change);
            }
            boolean settled = !(next < sum * (1 - 1e-15));
            exponent += next <= sum ? change : 0;
            sum = Math.min(sum, next);
            if (settled) {
                return sum;
            }
        }
        return sum;
    }

    private double sumAlong(double lnRate, double at, double exponent) {
        double sum = 0;
        for (int i = 0; i < solution.x.length; i++) {
            double ln = lnRate + exponent * (solution.x[i] - at);
            double miss = solution.y[i] - (power ? StrictMath.exp(ln) : ln);
            sum += solution.weight(i) * miss * miss;
        }
        return sum;
    }
}
