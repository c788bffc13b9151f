package io.burnlaw.campaign;

/** The zero of a pressure: ambient pressure or vacuum. */
public enum PressureKind {
    /** From the pressure of the surrounding air. */
    GAUGE,
    /** From vacuum. */
    ABSOLUTE
}
