package io.burnlaw.planning;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;

/**
 * A law that was not measured: a rate at a pressure and an exponent, from a book or from a similar propellant, each
 * with a stated uncertainty.
 *
 * @param rate     at the pressure [m/s]
 * @param pressure [Pa, absolute]
 * @param exponent [1]
 * @param scatter  relative standard deviation of a firing about the law [1]
 */
public record FirstGuess(Measured rate, double pressure, Measured exponent, double scatter) {

    /** Of a rate from a book, where nobody stated one [1]; common practice, no source. */
    public static final double USUAL_RATE_STD = 0.10;

    /** Of an exponent from a book, where nobody stated one [1]; common practice, no source. */
    public static final double USUAL_EXPONENT_STD = 0.05;

    /** Of single firings about their law [1]; common practice, no source. */
    public static final double USUAL_SCATTER = 0.03;

    /** Of density times c*, neither of them measured [1]; common practice, no source. */
    public static final double USUAL_STRENGTH_STD = 0.05;

    /** An uncertainty is taken at its word, so that the degrees of freedom say nothing: any number will do. */
    private static final int DEGREES = 1;

    public FirstGuess {
        if (!(rate.value() > 0 && pressure > 0 && scatter > 0)) {
            throw new IllegalArgumentException(
                    "a guess of " + rate.value() + " m/s at " + pressure + " Pa, scatter " + scatter);
        }
    }

    /**
     * The uncertainty of density times c*: as stated, else the usual one.
     *
     * @param density  of the propellant [kg/m³]
     * @param velocity c* [m/s]
     * @return relative standard deviation [1]
     */
    public static double strengthStd(Measured density, Measured velocity) {
        return density.std().isEmpty() && velocity.std().isEmpty()
                ? USUAL_STRENGTH_STD
                : Math.hypot(density.stdOr(0) / density.value(), velocity.stdOr(0) / velocity.value());
    }

    /** {@return the law, rate and exponent taken as uncorrelated} */
    public PiecewiseLaw law() {
        double rateStd = rate.stdOr(USUAL_RATE_STD * rate.value()) / rate.value();
        double exponentStd = exponent.stdOr(USUAL_EXPONENT_STD);
        return PiecewiseLaw.of(new RateLaw(
                StrictMath.log(rate.value()),
                exponent.value(),
                pressure,
                rateStd * rateStd,
                0,
                exponentStd * exponentStd,
                DEGREES,
                scatter,
                pressure,
                pressure,
                0,
                Weighting.MEASURED,
                SystematicError.NONE));
    }
}
