package io.burnlaw.campaign;

/** What a pressure counts from. */
public enum PressureKind {
    /** From the pressure of the surrounding air. */
    GAUGE,
    /** From vacuum. */
    ABSOLUTE
}
