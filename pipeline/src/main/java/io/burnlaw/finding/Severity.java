package io.burnlaw.finding;

/** How much a finding matters for the result. */
public enum Severity {
    /** Worth knowing; the number stands. */
    NOTE,
    /** The number stands with a wider uncertainty, or somebody should look at it. */
    CAUTION,
    /** The number was not made. */
    REJECTION
}
