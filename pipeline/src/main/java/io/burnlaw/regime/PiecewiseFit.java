package io.burnlaw.regime;

import io.burnlaw.regime.Regimes.Shape;

/**
 * A fitted set of straight pieces.
 *
 * @param breaks     places in x, ascending, one fewer than pieces
 * @param starts     first point of each piece
 * @param levels     of each piece at x = 0
 * @param fitted     value at each point
 * @param rss        weighted sum of squares of the residuals
 */
record PiecewiseFit(
        Shape shape, double[] breaks, int[] starts, double[] slopes, double[] levels, double[] fitted, double rss) {

    int count() {
        return slopes.length;
    }

    /** {@return coefficients without the places of the breaks} */
    int coefficients() {
        return shape == Shape.JOINED ? count() + 1 : 2 * count();
    }

    /** {@return coefficients and places of breaks} */
    int parameters() {
        return coefficients() + count() - 1;
    }

    /**
     * The Bayesian information criterion but for a constant: N·ln(RSS/n) + parameters·ln N.
     *
     * @param effectivePoints N, how many independent points these are worth
     */
    double bic(double effectivePoints) {
        return effectivePoints * Math.log(Math.max(rss, Double.MIN_NORMAL) / fitted.length)
                + parameters() * Math.log(effectivePoints);
    }

    int end(int piece) {
        return piece + 1 < count() ? starts[piece + 1] : fitted.length;
    }
}
