package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * What was fired, as the log has it, and what follows from its geometry alone.
 *
 * @param grain kind and dimensions in words
 * @param propellantMass expelled, g
 * @param grainTemperature when fired, K
 * @param ambientPressure on the day, absolute
 * @param areaRatioStart burning surface over throat area before the firing, at ignition [1]
 * @param areaRatioMost the same where it is largest [1]
 * @param areaRatioEnd the same just before the mean web is gone [1]
 * @param portToThroat area of the port at ignition over throat area [1]; absent where there is no port or it is not known
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record FiredMotor(
        String grain,
        @Nullable Quantity propellantMass,
        @Nullable Quantity grainTemperature,
        Quantity ambientPressure,
        @Nullable Double areaRatioStart,
        @Nullable Double areaRatioMost,
        @Nullable Double areaRatioEnd,
        @Nullable Double portToThroat) {}
