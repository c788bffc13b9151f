package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * Throat diameter.
 *
 * @param before the firing
 * @param after the firing
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Throat(Quantity before, @Nullable Quantity after) {}
