package io.burnlaw.regime;

import java.util.OptionalDouble;

/**
 * Another explanation of the same points, without any break.
 *
 * @param kind      which
 * @param rss       sum of squares of its residuals in ln r, weighted [1]
 * @param bic       Bayesian information criterion, smaller is better
 * @param parameter what the kind's curve is governed by
 * @param pValue    how often points simulated from the rival would favour the breaks as much as these do [1]; empty
 *                  where no break is in question
 * @param beaten    whether the breaks explain more than chance would if the rival were true
 * @param sentence  what it means
 */
public record Rival(
        Kind kind, double rss, double bic, double parameter, OptionalDouble pValue, boolean beaten, String sentence) {

    /** Which explanation. */
    public enum Kind {
        /** ln r is a quadratic in ln P; its parameter is dn/d(ln P) [1]. */
        QUADRATIC,
        /** 1/r = A/P + B/P^(1/3) (Summerfield and others 1960); its parameter is (A/B)^(3/2), a pressure [Pa]. */
        TWO_TERM,
        /** One law seen by a sensor that reads too high by a constant, its parameter [Pa]. */
        ZERO_OFFSET
    }

    /** {@return whether the propellant itself would burn along this curve} */
    public boolean smooth() {
        return kind != Kind.ZERO_OFFSET;
    }
}
