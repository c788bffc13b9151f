/**
 * The law r = a·P^n and its intervals. Input: rate-pressure points. Output: a law with covariance, intervals and bands.
 * Read {@link io.burnlaw.ratelaw.RateLawFit} first, then {@link io.burnlaw.ratelaw.RateLaw}.
 */
package io.burnlaw.ratelaw;
