package io.burnlaw.comparison;

import org.apache.commons.statistics.distribution.FDistribution;

/**
 * An F test of a restriction on a linear model.
 *
 * @param statistic          F [1]
 * @param numeratorDegrees   how many restrictions
 * @param denominatorDegrees of freedom of the residual variance, rounded down
 * @param pValue             [1]
 */
public record FTest(double statistic, int numeratorDegrees, int denominatorDegrees, double pValue) {

    static FTest of(double extraSquares, int restrictions, double variance, double degrees) {
        double statistic = extraSquares / restrictions / variance;
        return new FTest(
                statistic,
                restrictions,
                // a hair more, so that a whole number that was computed stays the same
                (int) Math.floor(degrees + 1e-6),
                FDistribution.of(restrictions, degrees).survivalProbability(statistic));
    }
}
