package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a throat would do.
 *
 * @param throatDiameter mm
 * @param drills that come next to it
 * @param equilibriumPressure mean over the burn with its prediction, absolute
 * @param maxPressure over the burn with its prediction, absolute
 * @param burnTime s
 * @param allowed below the case limit over the safety factor
 * @param reason why not
 * @param otherEquilibria MPa, absolute
 * @param exponentStdAfter standard uncertainty of the exponent with this firing added [1]
 * @param remark what else must be known of it, such as that it lies outside of the pressures fired
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record PlannedThroat(
        Quantity throatDiameter,
        List<DrillChoice> drills,
        Quantity equilibriumPressure,
        Quantity maxPressure,
        @Nullable Quantity burnTime,
        boolean allowed,
        @Nullable String reason,
        List<Double> otherEquilibria,
        @Nullable Double exponentStdAfter,
        @Nullable String remark) {

    public PlannedThroat {
        drills = List.copyOf(drills);
        otherEquilibria = List.copyOf(otherEquilibria);
    }
}
