package io.burnlaw.ratelaw;

/**
 * The same points fitted in another way, for comparison.
 *
 * @param name        such as {@code huber} or {@code orthogonal-distance}
 * @param law         that it gives
 * @param coefficient interval of a, the rate at 1 MPa [m/s]
 * @param exponent    interval of n [1]
 * @param sentence    what it says against the published fit
 */
public record OtherFit(String name, RateLaw law, Interval coefficient, Interval exponent, String sentence) {}
