package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * A twist drill near a wanted throat.
 *
 * @param series {@code metric}, {@code number}, {@code letter} or {@code fraction}
 * @param name as stamped
 * @param diameter mm
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record DrillChoice(String series, String name, double diameter) {}
