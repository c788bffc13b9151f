package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Whether a steady pressure exists.
 *
 * @param exponent the one that matters [1]
 * @param verdict a sentence
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Stability(double exponent, String verdict) {}
