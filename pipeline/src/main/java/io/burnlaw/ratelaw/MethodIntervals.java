package io.burnlaw.ratelaw;

import java.util.OptionalInt;

/**
 * The intervals that one method gives.
 *
 * @param method          by which they were made
 * @param coefficient     of a, the rate at 1 MPa [m/s]
 * @param exponent        of n [1]
 * @param rateAtReference of the rate at the reference pressure [m/s]
 * @param replicates      of a bootstrap
 */
public record MethodIntervals(
        Interval.Method method,
        Interval coefficient,
        Interval exponent,
        Interval rateAtReference,
        OptionalInt replicates) {}
