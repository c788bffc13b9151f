package io.burnlaw.ratelaw;

import io.burnlaw.campaign.Weighting;

/** A law with proportional weighting and without a shared error. */
public final class MadeLaw {

    private MadeLaw() {}

    public static RateLaw of(
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
            int points) {
        return new RateLaw(
                lnRateAtReference,
                exponent,
                referencePressure,
                rateVariance,
                covariance,
                exponentVariance,
                degreesOfFreedom,
                residualScatter,
                pressureLow,
                pressureHigh,
                points,
                Weighting.PROPORTIONAL,
                SystematicError.NONE);
    }
}
