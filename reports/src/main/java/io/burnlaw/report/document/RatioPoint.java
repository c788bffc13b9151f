package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Rate of the candidate over rate of the baseline.
 *
 * @param pressure MPa, absolute
 * @param value [1]
 * @param low of the simultaneous band [1]
 * @param high of the simultaneous band [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record RatioPoint(double pressure, double value, double low, double high) {}
