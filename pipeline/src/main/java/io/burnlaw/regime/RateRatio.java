package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import org.apache.commons.statistics.distribution.TDistribution;

/** The ratio of two laws that rest on different points of the same instruments. */
final class RateRatio {

    private RateRatio() {}

    /** Upper over lower law at a pressure; what both share cancels. */
    static Interval interval(RateLaw below, RateLaw above, double pressure, double level) {
        double free = Math.min(below.degreesOfFreedom(), above.degreesOfFreedom());
        if (free < 1) {
            return new Interval.NotEstimable(
                    "as many parameters as points leave nothing to judge the scatter by; one firing more on either side"
                            + " would");
        }
        double ln = StrictMath.log(above.rate(pressure) / below.rate(pressure));
        double half = Math.sqrt(variance(below, pressure) + variance(above, pressure))
                * TDistribution.of(free).inverseCumulativeProbability(0.5 + level / 2);
        return new Interval.Estimated(
                StrictMath.exp(ln - half), StrictMath.exp(ln + half), level, Interval.Method.STUDENT_T);
    }

    private static double variance(RateLaw law, double pressure) {
        double x = StrictMath.log(pressure / law.referencePressure());
        return law.rateVariance() + 2 * x * law.covariance() + x * x * law.exponentVariance();
    }
}
