/**
 * Results of a reduction: rate-pressure points with their uncertainty budgets, rates along a burn, and columns of
 * numbers that are kept on disk. Read {@link io.burnlaw.reduction.point.RatePoint} first.
 */
package io.burnlaw.reduction.point;
