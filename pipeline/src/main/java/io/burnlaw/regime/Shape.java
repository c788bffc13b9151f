package io.burnlaw.regime;

/** How laws that stand side by side meet. */
public enum Shape {
    /** The rate is the same on both sides of a break; only the exponent changes. */
    JOINED,
    /** The rate itself changes at a break. */
    JUMPING
}
