package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Rate and pressure at a moment of a burn.
 *
 * @param time s
 * @param web mm
 * @param pressure MPa, absolute
 * @param rate mm/s
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Along(double time, double web, double pressure, double rate) {}
