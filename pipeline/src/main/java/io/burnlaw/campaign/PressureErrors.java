package io.burnlaw.campaign;

/** How a fit treats the uncertainty of the pressures. */
public enum PressureErrors {
    /** Not at all: the pressures are taken as exact. */
    NONE,
    /** An error of the pressure counts as an error of the rate, through the law's slope (Orear 1982). */
    EFFECTIVE_VARIANCE,
    /** The distance to the law is measured in both directions (Boggs, Byrd and Schnabel 1987). */
    ORTHOGONAL_DISTANCE
}
