package io.burnlaw.regime;

/** The trade's word for a regime. */
public enum RegimeKind {
    /** The exponent lies between those of plateau and of instability. */
    ORDINARY,
    /** The rate hardly depends on pressure. */
    PLATEAU,
    /** The rate falls as the pressure rises: the exponent is negative. */
    MESA,
    /** The exponent is 1 or more: no steady pressure in a motor. */
    UNSTABLE,
    /** Below the threshold pressure, by a slower law than above it. */
    SLOW_BURNING
}
