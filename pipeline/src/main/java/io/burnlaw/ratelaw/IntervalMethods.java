package io.burnlaw.ratelaw;

import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** The intervals of one fit by every method. */
final class IntervalMethods {

    private IntervalMethods() {}

    static List<MethodIntervals> of(WeightedSolution solution, RateLaw law, List<FitPoint> points, FitOptions options) {
        double level = options.level();
        double atCoefficient = StrictMath.log(RateLaw.COEFFICIENT_PRESSURE) - solution.lnPressureUnit;
        double atReference = StrictMath.log(law.referencePressure()) - solution.lnPressureUnit;
        List<MethodIntervals> all = new ArrayList<>();
        all.add(studentT(law, level));
        ProfileIntervals profile = new ProfileIntervals(solution, law.quantile(level), level);
        all.add(new MethodIntervals(
                Interval.Method.PROFILE,
                rate(profile.lnRate(atCoefficient), law, RateLaw.COEFFICIENT_PRESSURE, solution.lnRateUnit),
                exponent(profile.exponent(), law),
                rate(profile.lnRate(atReference), law, law.referencePressure(), solution.lnRateUnit),
                OptionalInt.empty()));
        if (options.replicates() > 0) {
            BootstrapIntervals bootstrap = new BootstrapIntervals(
                    new Resampling(solution, points), solution.parameters, options.replicates(), options.seed(), level);
            all.add(new MethodIntervals(
                    Interval.Method.BOOTSTRAP_BCA,
                    rate(bootstrap.lnRate(atCoefficient), law, RateLaw.COEFFICIENT_PRESSURE, solution.lnRateUnit),
                    exponent(bootstrap.exponent(), law),
                    rate(bootstrap.lnRate(atReference), law, law.referencePressure(), solution.lnRateUnit),
                    OptionalInt.of(options.replicates())));
        }
        return all;
    }

    static MethodIntervals studentT(RateLaw law, double level) {
        return new MethodIntervals(
                Interval.Method.STUDENT_T,
                law.interval(RateLaw.COEFFICIENT_PRESSURE, level),
                law.exponentInterval(level),
                law.interval(law.referencePressure(), level),
                OptionalInt.empty());
    }

    private static Interval exponent(Interval interval, RateLaw law) {
        return widened(interval, law.exponent(), Math.abs(law.commonError().exponent()), value -> value);
    }

    private static Interval rate(Interval ln, RateLaw law, double pressure, double lnRateUnit) {
        double x = StrictMath.log(pressure / law.referencePressure());
        return widened(
                ln,
                StrictMath.log(law.rate(pressure)) - lnRateUnit,
                law.commonError().at(x),
                value -> StrictMath.exp(value + lnRateUnit));
    }

    /** Neither the profile nor the bootstrap can see what all firings share: it is added in quadrature to each side. */
    private static Interval widened(Interval interval, double middle, double common, DoubleUnaryOperator scale) {
        if (!(interval instanceof Interval.Estimated e)) {
            return interval;
        }
        double shared = common * NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + e.level() / 2);
        double low = common > 0 ? Math.min(e.low(), middle - Math.hypot(middle - e.low(), shared)) : e.low();
        double high = common > 0 ? Math.max(e.high(), middle + Math.hypot(e.high() - middle, shared)) : e.high();
        return new Interval.Estimated(scale.applyAsDouble(low), scale.applyAsDouble(high), e.level(), e.method());
    }

    /**
     * Bias-corrected and accelerated intervals from refits to firings drawn with replacement.
     *
     * <pre>
     *     z0 = Φ⁻¹( share of the replicates below the estimate )
     *     α  = sum (m - t_k)³ / ( 6 · [ sum (m - t_k)² ]^(3/2) )     t_k without firing k, m their mean
     *     ends at the quantiles  Φ( z0 + (z0 ± z) / (1 - α·(z0 ± z)) )  of the replicates
     * </pre>
     *
     * <p><b>Source.</b> Efron (1987); Efron and Tibshirani (1993), eq. 14.9 to 14.15.
     */
    static final class BootstrapIntervals {

        /** Below this many firings the draws have too few different outcomes to have quantiles far out. */
        static final int FEWEST_FIRINGS = 5;

        private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

        private final double[] estimate;
        private final double[][] replicates;
        private final double[][] without;
        private final double level;

        BootstrapIntervals(Resampling resampling, double[] estimate, int count, long seed, double level) {
            this.estimate = estimate;
            this.level = level;
            replicates = resampling.clusters() < FEWEST_FIRINGS ? new double[0][] : resampling.replicates(count, seed);
            without = resampling.jackknife();
        }

        /** Of p0 + at·p1, the logarithm of the rate at a pressure. */
        Interval lnRate(double at) {
            return of(1, at);
        }

        /** Of the exponent. */
        Interval exponent() {
            return of(0, 1);
        }

        private Interval of(double first, double second) {
            if (replicates.length == 0) {
                return new Interval.NotEstimable(
                        "fewer than " + FEWEST_FIRINGS + " independent firings are too few for a bootstrap");
            }
            return corrected(
                    values(replicates, first, second),
                    values(without, first, second),
                    first * estimate[0] + second * estimate[1],
                    level);
        }

        /** The interval of a value, from what it is in each replicate and without each firing. */
        static Interval corrected(double[] replicates, double[] without, double estimate, double level) {
            double[] sorted = replicates.clone();
            Arrays.sort(sorted);
            int below = 0;
            int equal = 0;
            for (double value : sorted) {
                below += value < estimate ? 1 : 0;
                equal += value == estimate ? 1 : 0;
            }
            double share = (below + 0.5 * equal) / sorted.length;
            if (!(share > 0 && share < 1)) {
                return new Interval.NotEstimable(
                        "all replicates are on one side of the estimate; more firings are needed");
            }
            double bias = NORMAL.inverseCumulativeProbability(share);
            double acceleration = acceleration(without);
            double tail = NORMAL.inverseCumulativeProbability(0.5 + level / 2);
            double low = quantile(sorted, share(bias, acceleration, -tail));
            double high = quantile(sorted, share(bias, acceleration, tail));
            return new Interval.Estimated(
                    Math.min(low, high), Math.max(low, high), level, Interval.Method.BOOTSTRAP_BCA);
        }

        private static double[] values(double[][] parameters, double first, double second) {
            double[] values = new double[parameters.length];
            for (int r = 0; r < values.length; r++) {
                values[r] = first * parameters[r][0] + second * parameters[r][1];
            }
            return values;
        }

        private static double acceleration(double[] left) {
            double mean = Arrays.stream(left).average().orElseThrow();
            double square = 0;
            double cube = 0;
            for (double value : left) {
                double d = mean - value;
                square += d * d;
                cube += d * d * d;
            }
            return square > 0 ? cube / (6 * (square * Math.sqrt(square))) : 0;
        }

        private static double share(double bias, double acceleration, double z) {
            double shifted = bias + z;
            return NORMAL.cumulativeProbability(bias + shifted / (1 - acceleration * shifted));
        }

        /** By linear interpolation between the order statistics, at (count + 1)·p. */
        private static double quantile(double[] sorted, double p) {
            double place = Math.min(Math.max((sorted.length + 1) * p - 1, 0), sorted.length - 1.0);
            int below = (int) place;
            int above = Math.min(below + 1, sorted.length - 1);
            return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
        }
    }
}
