package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * The exponent along single burns against the one between firings.
 *
 * @param within exponent along the burns
 * @param between exponent between firings
 * @param firingScatter relative standard deviation between firings [1]
 * @param pValue that they agree
 * @param sentence in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record WithinBetween(Quantity within, Quantity between, double firingScatter, double pValue, String sentence) {}
