package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * A smooth explanation that competes with breaks.
 *
 * @param name such as {@code quadratic}
 * @param bic Bayesian information criterion, smaller is better
 * @param beaten whether the breaks explain more
 * @param sentence what it means
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Rival(String name, double bic, boolean beaten, String sentence) {}
