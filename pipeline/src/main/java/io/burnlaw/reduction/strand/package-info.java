/**
 * Rates of strands: length over time. Read {@link io.burnlaw.reduction.strand.StrandReducer} first.
 */
package io.burnlaw.reduction.strand;
