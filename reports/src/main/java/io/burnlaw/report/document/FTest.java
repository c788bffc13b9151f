package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * An F test.
 *
 * @param statistic F
 * @param numeratorDegrees of freedom
 * @param denominatorDegrees of freedom
 * @param pValue [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record FTest(double statistic, int numeratorDegrees, int denominatorDegrees, double pValue) {}
