/**
 * From a trace and a grain to a rate-pressure point. Input: both. Output: a reduction with events, points, budget and
 * findings, or a rejection. Read {@link io.burnlaw.reduction.Reduction} first.
 */
package io.burnlaw.reduction;
