/**
 * What a reduction gives: rate-pressure points with their budgets of uncertainty, rates along a burn, and the columns
 * that wait on disk. Read {@link io.burnlaw.reduction.point.RatePoint} first.
 */
package io.burnlaw.reduction.point;
