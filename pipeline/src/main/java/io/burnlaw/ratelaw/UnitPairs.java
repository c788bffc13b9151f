package io.burnlaw.ratelaw;

import io.burnlaw.quantity.Unit;
import java.util.List;

/**
 * Restates a law in pairs of units.
 *
 * <pre>
 *     a[u_r, u_P]            = r(1 u_P) / u_r
 *     ln a                   = L + n·x                        x = ln(1 u_P / P_ref)
 *     var(ln a)              = var(L) + 2·x·cov(L, n) + x²·var(n)
 *     cov(ln a, n)           = cov(L, n) + x·var(n)
 * </pre>
 *
 * A coefficient is the law's rate at one unit of pressure, so its interval is the law's interval there and not the
 * interval in other units times a factor: far from the data it is wide, and so is its correlation with the exponent.
 * The variances hold the shared error of the firings too.
 */
public final class UnitPairs {

    private UnitPairs() {}

    /**
     * The law in the customary pairs: MPa and mm/s, bar and mm/s, psi and in/s, Pa and m/s.
     *
     * @param level confidence of the intervals [1], between 0 and 1
     * @return one for each pair, in that order
     */
    public static List<CoefficientIn> of(RateLaw law, double level) {
        return List.of(
                in(law, Unit.MEGAPASCAL, Unit.MILLIMETRE_PER_SECOND, level),
                in(law, Unit.BAR, Unit.MILLIMETRE_PER_SECOND, level),
                in(law, Unit.POUND_PER_SQUARE_INCH, Unit.INCH_PER_SECOND, level),
                in(law, Unit.PASCAL, Unit.METRE_PER_SECOND, level));
    }

    /**
     * The law in one pair of units.
     *
     * @param level confidence of the interval [1], between 0 and 1
     * @return the coefficient with its interval and covariance
     */
    public static CoefficientIn in(RateLaw law, Unit pressureUnit, Unit rateUnit, double level) {
        double one = pressureUnit.toSi(1);
        double x = StrictMath.log(one / law.referencePressure());
        SystematicError common = law.commonError();
        double lnStd = law.lnStd(one);
        Interval interval = law.interval(one, level)
                .estimated()
                .<Interval>map(e -> new Interval.Estimated(
                        rateUnit.fromSi(e.low()), rateUnit.fromSi(e.high()), e.level(), e.method()))
                .orElseGet(() -> law.interval(one, level));
        return new CoefficientIn(
                pressureUnit,
                rateUnit,
                rateUnit.fromSi(law.rate(one)),
                interval,
                law.exponent(),
                lnStd * lnStd,
                law.covariance() + x * law.exponentVariance() + common.covariance() + x * common.exponentVariance(),
                law.exponentStd() * law.exponentStd());
    }

    /**
     * A law in a usual pair of units: r = a·P^n with P absolute.
     *
     * @param coefficient      a, the rate at one pressure unit, in rate units
     * @param interval         of the coefficient, in rate units
     * @param exponent         n [1]
     * @param lnVariance       variance of the logarithm of the coefficient [1]
     * @param covariance       of that logarithm and the exponent [1]
     * @param exponentVariance variance of the exponent [1]
     */
    public record CoefficientIn(
            Unit pressureUnit,
            Unit rateUnit,
            double coefficient,
            Interval interval,
            double exponent,
            double lnVariance,
            double covariance,
            double exponentVariance) {}
}
