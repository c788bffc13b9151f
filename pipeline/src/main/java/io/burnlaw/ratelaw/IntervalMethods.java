package io.burnlaw.ratelaw;

import java.util.ArrayList;
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
}
