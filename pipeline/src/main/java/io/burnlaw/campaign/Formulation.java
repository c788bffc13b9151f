package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One propellant of a campaign.
 *
 * @param id               the name used in the tables
 * @param title            what people read
 * @param density          as measured on cast samples [kg/m3]
 * @param baseline         whether others are compared with it
 * @param compareWith      id of the formulation that it is compared with
 * @param additive         name of the additive, if there is one
 * @param additiveFraction its share by mass [1]
 */
public record Formulation(
        String id,
        String title,
        Optional<Measured> density,
        boolean baseline,
        Optional<String> compareWith,
        Optional<String> additive,
        OptionalDouble additiveFraction) {}
