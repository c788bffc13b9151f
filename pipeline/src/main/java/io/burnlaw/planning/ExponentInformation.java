package io.burnlaw.planning;

import io.burnlaw.ratelaw.RateLaw;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * What a further firing would tell of a law: its information matrix, to which each firing at P adds
 *
 * <pre>
 *     ( 1  x ; x  x^2 ) / s^2                            x = ln(P / P_ref),  s the scatter of a firing
 * </pre>
 *
 * <p><b>Source.</b> D-optimality for the parameter wanted: Atkinson and Donev, Optimum Experimental Designs (1992),
 * chapters 10 and 11.
 */
record ExponentInformation(RateLaw law, double level, double slope, double spread, double degrees) {

    /** Of a law that goes through its points: it still scatters by this much. */
    private static final double LEAST_SCATTER = 1e-3;

    /** Of a law that goes through its points [1]. */
    private static final double LEAST_VARIANCE = 1e-12;

    static ExponentInformation of(RateLaw law) {
        double rate = Math.max(LEAST_VARIANCE, law.rateVariance());
        double exponent = Math.max(LEAST_VARIANCE, law.exponentVariance());
        // never singular: two parameters that are wholly correlated would promise that one firing tells both
        double most = 0.9999 * Math.sqrt(rate * exponent);
        double covariance = Math.max(-most, Math.min(most, law.covariance()));
        double determinant = rate * exponent - covariance * covariance;
        return new ExponentInformation(
                law, exponent / determinant, -covariance / determinant, rate / determinant, law.degreesOfFreedom());
    }

    /** With a firing added. */
    ExponentInformation with(double pressure) {
        double x = StrictMath.log(pressure / law.referencePressure());
        double s = Math.max(LEAST_SCATTER, law.scatterAt(pressure));
        double weight = 1 / (s * s);
        return new ExponentInformation(law, level + weight, slope + weight * x, spread + weight * x * x, degrees + 1);
    }

    /** Standard uncertainty of the exponent, the shared error included: that no firing mends. */
    double exponentStd() {
        return Math.hypot(scatterStd(), law.commonError().exponent());
    }

    double halfWidth(double confidence) {
        double normal = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + confidence / 2);
        double student = law.weighting().estimatesScale() && degrees >= 1
                ? TDistribution.of(degrees).inverseCumulativeProbability(0.5 + confidence / 2)
                : normal;
        return Math.hypot(student * scatterStd(), normal * law.commonError().exponent());
    }

    private double scatterStd() {
        return Math.sqrt(level / (level * spread - slope * slope));
    }
}
