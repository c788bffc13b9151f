package io.burnlaw.ratelaw;

import io.burnlaw.quantity.Unit;

/**
 * A law in a pair of units that people design with: r = a·P^n with P absolute.
 *
 * @param pressureUnit        of P
 * @param rateUnit            of r
 * @param coefficient         a, the rate at one pressure unit, in rate units
 * @param interval            of the coefficient, in rate units
 * @param exponent            n [1]
 * @param lnVariance          variance of the logarithm of the coefficient [1]
 * @param covariance          of that logarithm and the exponent [1]
 * @param exponentVariance    variance of the exponent [1]
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
