package io.burnlaw.ratelaw;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The law r = a·P^n as fitted, parametrized by the logarithm of the rate at a reference pressure and the exponent:
 *
 * <pre>
 *     r(P) = exp( lnRateAtReference + exponent · ln(P / referencePressure) )                       [m/s]
 * </pre>
 *
 * @param lnRateAtReference natural logarithm of the rate at the reference pressure [ln(m/s)]
 * @param exponent          n [1]
 * @param referencePressure [Pa, absolute]
 * @param rateVariance      variance of lnRateAtReference [1]
 * @param covariance        of lnRateAtReference and exponent [1]
 * @param exponentVariance  variance of the exponent [1]
 * @param degreesOfFreedom  of the residual scatter; points less two, fewer where points share a cluster
 * @param residualScatter   relative standard deviation of the points about the law [1]
 * @param pressureLow       lowest pressure among the points [Pa, absolute]
 * @param pressureHigh      highest pressure among the points [Pa, absolute]
 * @param points            how many points were used
 */
public record RateLaw(
        double lnRateAtReference,
        double exponent,
        double referencePressure,
        double rateVariance,
        double covariance,
        double exponentVariance,
        int degreesOfFreedom,
        double residualScatter,
        double pressureLow,
        double pressureHigh,
        int points) {

    /** {@return the rate at the reference pressure [m/s]} */
    public double rateAtReference() {
        return StrictMath.exp(lnRateAtReference);
    }

    /**
     * The rate that the law gives.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [m/s]
     */
    public double rate(double pressure) {
        return StrictMath.exp(lnRateAtReference + exponent * StrictMath.log(pressure / referencePressure));
    }

    /**
     * Standard uncertainty of the logarithm of the law's mean.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [1]
     */
    public double lnStd(double pressure) {
        double x = StrictMath.log(pressure / referencePressure);
        return Math.sqrt(Math.max(0, rateVariance + 2 * x * covariance + x * x * exponentVariance));
    }

    /**
     * Confidence interval of the mean rate.
     *
     * @param pressure [Pa, absolute], above zero
     * @param level    [1], between 0 and 1
     * @return [m/s]
     */
    public Interval interval(double pressure, double level) {
        return around(pressure, lnStd(pressure), level);
    }

    /**
     * Prediction interval of the rate of the next firing.
     *
     * @param pressure [Pa, absolute], above zero
     * @param level    [1], between 0 and 1
     * @return [m/s]
     */
    public Interval predict(double pressure, double level) {
        return around(pressure, Math.hypot(lnStd(pressure), residualScatter), level);
    }

    private Interval around(double pressure, double std, double level) {
        if (degreesOfFreedom < 1) {
            return new Interval.NotEstimable(
                    "two points leave nothing to judge the scatter by; a third firing at another pressure would");
        }
        double half = TDistribution.of(degreesOfFreedom).inverseCumulativeProbability(0.5 + level / 2) * std;
        double middle = StrictMath.log(rate(pressure));
        return new Interval.Estimated(
                StrictMath.exp(middle - half), StrictMath.exp(middle + half), level, Interval.Method.STUDENT_T);
    }
}
