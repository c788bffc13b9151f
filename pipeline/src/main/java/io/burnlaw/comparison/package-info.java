/**
 * Comparison of additives with their baseline. Input: the points (or the published laws) of two or more propellants.
 * Output: tests, ratios of rates with simultaneous bands, a trend over the dose, and verdicts in words. Read
 * {@link io.burnlaw.comparison.Comparisons} first.
 */
package io.burnlaw.comparison;
