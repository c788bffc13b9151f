package io.burnlaw.comparison;

import org.apache.commons.statistics.distribution.FDistribution;

/**
 * An F test of a restriction on a linear model.
 *
 * @param statistic          F [1]
 * @param numeratorDegrees   how many restrictions
 * @param denominatorDegrees of freedom of the residual variance
 * @param pValue             [1]
 */
public record FTest(double statistic, int numeratorDegrees, int denominatorDegrees, double pValue) {

    static FTest of(double extraSquares, int restrictions, double variance, int degrees) {
        double statistic = extraSquares / restrictions / variance;
        return new FTest(
                statistic,
                restrictions,
                degrees,
                FDistribution.of(restrictions, degrees).survivalProbability(statistic));
    }
}
