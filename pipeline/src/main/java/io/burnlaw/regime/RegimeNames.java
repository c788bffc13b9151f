package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;

/**
 * The trade's words for exponents. The figures are a convention of this project (no source draws the lines): mesa
 * n &lt; −0.05, plateau up to 0.1, unstable n ≥ 1. The word is that of the best estimate; it is settled where the whole
 * interval of the exponent stands behind what the word says: that the rate falls, hardly changes, or runs away.
 */
final class RegimeNames {

    private static final double PLATEAU = 0.1;
    private static final double FALLING = -0.05;

    /** How far the interval of a plateau may reach before the word is only a best estimate. */
    private static final double PLATEAU_WIDEST = 0.2;

    private RegimeNames() {}

    /** A word, and whether the interval stands wholly behind it. */
    record Name(RegimeKind kind, boolean settled) {}

    static Name of(double exponent, Interval interval) {
        double low = interval.estimated().map(Interval.Estimated::low).orElse(Double.NEGATIVE_INFINITY);
        double high = interval.estimated().map(Interval.Estimated::high).orElse(Double.POSITIVE_INFINITY);
        if (exponent >= 1) {
            return new Name(RegimeKind.UNSTABLE, low >= 1);
        }
        if (exponent < FALLING) {
            return new Name(RegimeKind.MESA, high < 0);
        }
        if (exponent < PLATEAU) {
            return new Name(RegimeKind.PLATEAU, low > -PLATEAU_WIDEST && high < PLATEAU_WIDEST);
        }
        return new Name(RegimeKind.ORDINARY, low > 0 && high < 1);
    }
}
