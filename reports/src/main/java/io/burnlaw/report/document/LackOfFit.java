package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Firings repeated at one pressure against the law: whether their means lie further from it than their own scatter
 * explains.
 *
 * @param statistic F
 * @param numeratorDegrees degrees of freedom of the means about the law
 * @param denominatorDegrees degrees of freedom of the repeated firings about their means
 * @param pValue of so large an F if the law were right [1]
 * @param pureScatter relative standard deviation of repeated firings [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record LackOfFit(
        double statistic, int numeratorDegrees, int denominatorDegrees, double pValue, double pureScatter) {}
