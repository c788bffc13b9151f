/**
 * Rates of strands: a length over a time. Read {@link io.burnlaw.reduction.strand.StrandReducer} first.
 */
package io.burnlaw.reduction.strand;
