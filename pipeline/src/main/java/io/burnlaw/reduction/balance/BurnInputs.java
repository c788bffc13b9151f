package io.burnlaw.reduction.balance;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.UsualUncertainty;

/**
 * Everything that the mass balance of one burn is made of, so that the effect of each on the rate can be tried.
 *
 * @param record        pressures [Pa, absolute] from shortly before the begin to the end of operation
 * @param grain         the grain, turned round
 * @param density       of the propellant as it lies in the grain [kg/m3]: mass over volume where the mass is known
 * @param throatBefore  throat area before [m2]
 * @param throatAfter   throat area after [m2]
 * @param flow          of gas through the nozzle on that day
 * @param igniterGas    mass of gas that the starter charge gave [kg]; 0 where it is not stated
 * @param chamberVolume of the empty case [m3], more than the grain's
 */
public record BurnInputs(
        UniformTrace record,
        WebTable grain,
        double density,
        double throatBefore,
        double throatAfter,
        ChokedFlowFraction flow,
        double igniterGas,
        double chamberVolume) {

    /**
     * Gathers them.
     *
     * @param burn   what was measured before the firing
     * @param record pressures [Pa, absolute]
     */
    public static BurnInputs of(Burn burn, UniformTrace record) {
        Firing row = burn.firing();
        WebTable grain = new WebTable(burn.grain());
        double density = row.propellantMass()
                .map(mass -> mass.value() / grain.volume())
                .or(() -> burn.formulation().density().map(Measured::value))
                .orElse(UsualUncertainty.NOMINAL_DENSITY);
        double before = area(row.throatDiameter().value());
        double stated = row.chamberVolume().map(Measured::value).orElse(0.0);
        return new BurnInputs(
                record,
                grain,
                density,
                before,
                row.throatDiameterAfter().map(d -> area(d.value())).orElse(before),
                new ChokedFlowFraction(
                        burn.formulation().specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO),
                        row.ambientPressure()),
                row.igniterGas().map(Measured::value).orElse(0.0),
                Motor.freeVolume(burn.grain(), stated) + grain.volume());
    }

    private static double area(double diameter) {
        return Math.PI / 4 * diameter * diameter;
    }

    public BurnInputs withRecord(UniformTrace other) {
        return new BurnInputs(other, grain, density, throatBefore, throatAfter, flow, igniterGas, chamberVolume);
    }

    public BurnInputs withThroatAfter(double other) {
        return new BurnInputs(record, grain, density, throatBefore, other, flow, igniterGas, chamberVolume);
    }

    public BurnInputs withChamberVolume(double other) {
        return new BurnInputs(record, grain, density, throatBefore, throatAfter, flow, igniterGas, other);
    }

    public BurnInputs withSpecificHeatRatio(double other) {
        return new BurnInputs(
                record,
                grain,
                density,
                throatBefore,
                throatAfter,
                new ChokedFlowFraction(other, flow.ambient()),
                igniterGas,
                chamberVolume);
    }

    public BurnInputs withIgniterGas(double other) {
        return new BurnInputs(record, grain, density, throatBefore, throatAfter, flow, other, chamberVolume);
    }

    /** {@return mass of the propellant [kg]} */
    public double mass() {
        return density * grain.volume();
    }
}
