package io.burnlaw.report.document;

/**
 * Between which moments of its record a strand was timed, on the axis of the record.
 *
 * @param begin of the burn, or when the first break wire went
 * @param end of the burn, or when the last break wire went
 */
public record TimedSpan(Quantity begin, Quantity end) {}
