package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * The rate of one firing of a batch not yet cast.
 *
 * @param pressure MPa, absolute
 * @param rate mm/s
 * @param low lower end of its prediction interval, mm/s
 * @param high upper end, mm/s
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record NextRate(double pressure, double rate, double low, double high) {}
