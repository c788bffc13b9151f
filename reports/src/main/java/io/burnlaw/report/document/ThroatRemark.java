package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * What else must be known of some throats of a table.
 *
 * @param from first throat, mm
 * @param to last throat, mm
 * @param text a sentence
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record ThroatRemark(double from, double to, String text) {}
