package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * The mean rate by each definition.
 *
 * @param thicknessTime web over burn time
 * @param massBalance corrected by the share of the pressure integral
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Rates(Quantity thicknessTime, @Nullable Quantity massBalance) {}
