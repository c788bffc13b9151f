package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * A pressure at which the law changes.
 *
 * @param pressure absolute
 * @param kind {@code slope} or {@code jump}
 * @param rateRatio rate just above over rate just below [1]
 * @param exponentBelow [1]
 * @param exponentAbove [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Break(Quantity pressure, String kind, double rateRatio, double exponentBelow, double exponentAbove) {}
