package io.burnlaw.ratelaw;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Unit;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The law r = a·P^n as fitted, parametrized by the logarithm of the rate at a reference pressure and the exponent:
 *
 * <pre>
 *     r(P) = exp( lnRateAtReference + exponent · ln(P / referencePressure) )                       [m/s]
 * </pre>
 *
 * <p>The variances are those of the scatter from firing to firing; what all firings share is in {@code commonError}, so
 * that it can be left out where two laws from the same instruments are compared.
 *
 * @param lnRateAtReference natural logarithm of the rate at the reference pressure [ln(m/s)]
 * @param exponent          n [1]
 * @param referencePressure [Pa, absolute]
 * @param rateVariance      variance of lnRateAtReference [1]
 * @param covariance        of lnRateAtReference and exponent [1]
 * @param exponentVariance  variance of the exponent [1]
 * @param degreesOfFreedom  of the residual scatter; points less two, fewer where points share a cluster; no whole number
 *                          where the variance has several parts
 * @param residualScatter   relative standard deviation of a point about the law [1]; with constant weighting at the
 *                          reference pressure
 * @param pressureLow       lowest pressure among the points [Pa, absolute]
 * @param pressureHigh      highest pressure among the points [Pa, absolute]
 * @param points            how many points were used
 * @param weighting         of the points: whether the scatter is known or estimated follows from it
 * @param commonError       what the firings' shared error does to the law
 */
public record RateLaw(
        double lnRateAtReference,
        double exponent,
        double referencePressure,
        double rateVariance,
        double covariance,
        double exponentVariance,
        double degreesOfFreedom,
        double residualScatter,
        double pressureLow,
        double pressureHigh,
        int points,
        Weighting weighting,
        SystematicError commonError) {

    /** The pressure at which the coefficient is stated: 1 MPa [Pa, absolute]. */
    public static final double COEFFICIENT_PRESSURE = Unit.MEGAPASCAL.toSi(1);

    /** {@return the rate at the reference pressure [m/s]} */
    public double rateAtReference() {
        return StrictMath.exp(lnRateAtReference);
    }

    /** {@return a, the rate at 1 MPa [m/s]} */
    public double coefficient() {
        return rate(COEFFICIENT_PRESSURE);
    }

    /**
     * The rate that the law gives.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [m/s]
     */
    public double rate(double pressure) {
        return StrictMath.exp(lnRateAtReference + exponent * lnRatio(pressure));
    }

    /**
     * Standard uncertainty of the logarithm of the law's mean: scatter and shared error together.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [1]
     */
    public double lnStd(double pressure) {
        return Math.hypot(lnScatterStd(pressure), commonError.at(lnRatio(pressure)));
    }

    /** {@return standard uncertainty of the exponent: scatter and shared error together [1]} */
    public double exponentStd() {
        return Math.hypot(Math.sqrt(exponentVariance), commonError.exponent());
    }

    /**
     * Confidence interval of the mean rate.
     *
     * @param pressure [Pa, absolute], above zero
     * @param level    [1], between 0 and 1
     * @return [m/s]
     */
    public Interval interval(double pressure, double level) {
        return aroundRate(pressure, lnScatterStd(pressure), level);
    }

    /**
     * Prediction interval of the rate of the next firing.
     *
     * @param pressure [Pa, absolute], above zero
     * @param level    [1], between 0 and 1
     * @return [m/s]
     */
    public Interval predict(double pressure, double level) {
        return aroundRate(pressure, Math.hypot(lnScatterStd(pressure), scatterAt(pressure)), level);
    }

    /**
     * Confidence interval of the exponent.
     *
     * @param level [1], between 0 and 1
     * @return [1]
     */
    public Interval exponentInterval(double level) {
        return around(exponent, Math.sqrt(exponentVariance), Math.abs(commonError.exponent()), level);
    }

    /**
     * Relative standard deviation of a single firing about the law.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [1]
     */
    public double scatterAt(double pressure) {
        return weighting == Weighting.CONSTANT ? residualScatter * rateAtReference() / rate(pressure) : residualScatter;
    }

    /**
     * How far one of the points that the law was fitted to lies off it, against how far it would lie off by chance.
     *
     * <p><b>Source.</b> Cook and Weisberg (1982), ch. 2: internally studentized, the leverage from the variance of the
     * fitted value.
     *
     * @param point one of those that were fitted
     * @return logarithm of measured over fitted rate, over its own standard deviation [1]
     */
    public double studentized(FitPoint point) {
        double pressure = point.pressure();
        double own = point.aboutLawStd(exponent, scatterAt(pressure), weighting.estimatesScale());
        double fitted = lnScatterStd(pressure);
        double room = Math.sqrt(own * own - fitted * fitted);
        double residual = StrictMath.log(point.rate() / rate(pressure));
        return room > 0 ? residual / room : 0;
    }

    /** From the scatter alone. */
    private double lnScatterStd(double pressure) {
        double x = lnRatio(pressure);
        return Math.sqrt(Math.max(0, rateVariance + 2 * x * covariance + x * x * exponentVariance));
    }

    private double lnRatio(double pressure) {
        return StrictMath.log(pressure / referencePressure);
    }

    private Interval aroundRate(double pressure, double std, double level) {
        Interval ln = around(StrictMath.log(rate(pressure)), std, commonError.at(lnRatio(pressure)), level);
        return ln instanceof Interval.Estimated e
                ? new Interval.Estimated(StrictMath.exp(e.low()), StrictMath.exp(e.high()), level, e.method())
                : ln;
    }

    /** The shared error has its own, known distribution: it takes the normal quantile where the scatter takes Student's. */
    private Interval around(double middle, double std, double common, double level) {
        if (degreesOfFreedom < 1) {
            return new Interval.NotEstimable("two points do not show the scatter; fire a third at another pressure");
        }
        double normal = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
        double half = Math.hypot(quantile(level) * std, normal * common);
        return new Interval.Estimated(middle - half, middle + half, level, Interval.Method.STUDENT_T);
    }

    /** Of Student's t, or of the normal distribution where the scatter is known. */
    double quantile(double level) {
        return weighting.estimatesScale()
                ? TDistribution.of(degreesOfFreedom).inverseCumulativeProbability(0.5 + level / 2)
                : NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
    }
}
