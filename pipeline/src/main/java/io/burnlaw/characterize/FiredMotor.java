package io.burnlaw.characterize;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.Reduction;
import java.util.Optional;

/** The motor of a row of the log, ready to be fired again by the simulation. */
final class FiredMotor {

    private FiredMotor() {}

    /**
     * Builds it. The density is the firing's own, mass over volume, where the mass is known: a designer knows it before
     * the firing too.
     *
     * @param velocity c* [m/s]
     * @return the motor; empty where neither mass nor density is known, or the grain cannot exist
     */
    static Optional<Motor> of(Firing firing, Formulation formulation, double velocity) {
        return Grains.of(firing.grain())
                .value()
                .flatMap(grain -> firing.propellantMass()
                        .map(mass -> mass.value() / grain.volume(0))
                        .or(() -> formulation.density().map(Measured::value))
                        .map(density -> motor(firing, formulation, grain, density, velocity)));
    }

    private static Motor motor(Firing firing, Formulation formulation, Grain grain, double density, double velocity) {
        double before = firing.throatDiameter().value();
        double after = firing.throatDiameterAfter().map(Measured::value).orElse(before);
        double chamber = firing.chamberVolume().map(Measured::value).orElse(0.0);
        return new Motor(
                grain,
                density,
                new Gas(velocity, formulation.specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO)),
                new Nozzle(before).withThroat(before, after),
                Motor.freeVolume(grain, chamber),
                firing.ambientPressure());
    }

    /** A firing that gave a rate, with its row of the log. */
    record Fired(Firing row, Reduction.Reduced reduced) {}
}
