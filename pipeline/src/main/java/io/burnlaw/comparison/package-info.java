/**
 * Additives against their baseline. In go the points (or the published laws) of two or more propellants; out come tests,
 * ratios of rates with simultaneous bands, a trend over the dose, and verdicts in words. Read
 * {@link io.burnlaw.comparison.Comparisons} first.
 */
package io.burnlaw.comparison;
