package io.burnlaw.quantity;

/**
 * Defined conversion constants.
 *
 * <p><b>Source.</b> NIST Special Publication 811 (2008), appendix B.8: inch, pound, standard gravity and standard
 * atmosphere are exact by definition; the others follow from them.
 */
final class Exact {

    /** International inch [m]. */
    static final double INCH = 0.0254;

    /** [m]. */
    static final double FOOT = 0.3048;

    /** [m2]. */
    static final double SQUARE_INCH = 0.00064516;

    /** [m3]. */
    static final double CUBIC_INCH = 1.6387064e-5;

    /** [m3]. */
    static final double CUBIC_FOOT = 0.028316846592;

    /** Avoirdupois pound [kg]. */
    static final double POUND = 0.45359237;

    /** [m/s2]. */
    static final double STANDARD_GRAVITY = 9.80665;

    /** [N]. */
    static final double POUND_FORCE = 4.4482216152605;

    /** [Pa, absolute]. */
    static final double STANDARD_ATMOSPHERE = 101325;

    /** Conventional column of 13.5951 g/cm3 at standard gravity [Pa]. */
    static final double METRE_OF_MERCURY = 133322.387415;

    private Exact() {}
}
