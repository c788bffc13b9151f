/**
 * The law r = a·P^n and its intervals. In go rate-pressure points; out comes a law with covariance, intervals and bands.
 * Read {@link io.burnlaw.ratelaw.RateLawFit} first,
 * then {@link io.burnlaw.ratelaw.RateLaw}.
 */
package io.burnlaw.ratelaw;
