package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * When things happened in a burn, on the axis of the record.
 *
 * @param start first sign of burning
 * @param ignition of the web
 * @param webBurnout referred to the mean web
 * @param tangentBisector first opinion on the burnout
 * @param maximumCurvature second opinion on the burnout
 * @param end of operation
 * @param actionStart share of the highest pressure, rising
 * @param actionEnd the same, falling
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Events(
        Quantity start,
        Quantity ignition,
        Quantity webBurnout,
        Quantity tangentBisector,
        Quantity maximumCurvature,
        Quantity end,
        Quantity actionStart,
        Quantity actionEnd) {}
