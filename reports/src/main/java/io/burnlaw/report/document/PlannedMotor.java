package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The motor of a plan, without its throat.
 *
 * @param web burned, mm, from 0, rising
 * @param surface burning then, mm2, as many
 * @param freeVolume of the chamber around the new grain
 * @param density of the propellant
 * @param characteristicVelocity c*
 * @param specificHeatRatio of the gas [1]
 * @param ambientPressure absolute
 * @param strengthStd relative standard deviation of density times c* from firing to firing [1]
 * @param throatStd standard uncertainty of a throat, mm
 * @param slowBelow pressure below which the propellant may burn slowly, absolute
 * @param fastAbove pressure above which points burn faster than the law, absolute
 * @param highestFired pressure so far, absolute
 * @param ignitionSpike by which ignition stood above the burn: pressure times throat area, mean of the firings, N
 * @param ignitionSpikeStd standard deviation of the next firing about it, N
 * @param remarks that belong beside every plan for it
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record PlannedMotor(
        List<Double> web,
        List<Double> surface,
        Quantity freeVolume,
        Quantity density,
        Quantity characteristicVelocity,
        double specificHeatRatio,
        Quantity ambientPressure,
        double strengthStd,
        double throatStd,
        @Nullable Quantity slowBelow,
        @Nullable Quantity fastAbove,
        @Nullable Quantity highestFired,
        @Nullable Double ignitionSpike,
        @Nullable Double ignitionSpikeStd,
        List<String> remarks) {

    public PlannedMotor {
        web = List.copyOf(web);
        surface = List.copyOf(surface);
        remarks = List.copyOf(remarks);
    }
}
