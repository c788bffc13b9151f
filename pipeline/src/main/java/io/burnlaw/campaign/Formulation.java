package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One propellant of a campaign.
 *
 * @param id                     the name used in the tables
 * @param density                as measured on cast samples [kg/m3]
 * @param baseline               whether others are compared with it
 * @param compareWith            id of the formulation that it is compared with
 * @param additive               name of the additive, if there is one
 * @param additiveFraction       its share by mass [1]
 * @param specificHeatRatio      of the combustion products [1]; where nobody stated it, {@link #USUAL_SPECIFIC_HEAT_RATIO}
 * @param characteristicVelocity as expected by theory [m/s]; takes the place of the measured one where no mass is known,
 *                               and is what a measured one is judged by
 */
public record Formulation(
        String id,
        String title,
        Optional<Measured> density,
        boolean baseline,
        Optional<String> compareWith,
        Optional<String> additive,
        OptionalDouble additiveFraction,
        OptionalDouble specificHeatRatio,
        Optional<Measured> characteristicVelocity) {

    /** Of the two-phase mixture of potassium nitrate and sugars [1]: 1.1308 to 1.1361, from memory. */
    public static final double USUAL_SPECIFIC_HEAT_RATIO = 1.13;
}
