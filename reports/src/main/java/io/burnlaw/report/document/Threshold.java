package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The pressure below which the propellant burns slowly.
 *
 * @param pressure absolute
 * @param rateRatio fast over slow rate across it [1]
 * @param below ids of the points below
 * @param above ids of the points above
 * @param areaRatio smallest ratio of burning surface to throat area that keeps a motor above it [1]
 * @param sentence what it means for the owner of the motor
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Threshold(
        Quantity pressure,
        double rateRatio,
        List<String> below,
        List<String> above,
        @Nullable Double areaRatio,
        String sentence) {

    public Threshold {
        below = List.copyOf(below);
        above = List.copyOf(above);
    }
}
