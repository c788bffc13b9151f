package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * How the rate changes with the grain temperature.
 *
 * @param sigmaP at constant pressure, 1/K
 * @param piK of the pressure at constant geometry, 1/K
 * @param referenceTemperature to which rates were referred
 * @param sentence in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record TemperatureSensitivity(
        Quantity sigmaP, @Nullable Quantity piK, Quantity referenceTemperature, String sentence) {}
