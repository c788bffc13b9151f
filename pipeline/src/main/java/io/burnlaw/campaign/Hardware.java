package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The pressure limit of the motor case, and the igniter of all its firings.
 *
 * @param casePressureLimit  as stated [Pa, gauge]
 * @param safetyFactor       by which planned pressures stay below it [1], at least 1
 * @param igniterMass        of the starter charge, where a row of the log states none [kg]
 * @param igniterGasFraction share of that mass that becomes gas [1]
 */
public record Hardware(
        OptionalDouble casePressureLimit,
        double safetyFactor,
        Optional<Measured> igniterMass,
        Measured igniterGasFraction) {

    /** Of starter charges that leave much residue and of those that leave little [1]: common practice, no source. */
    public static final Measured USUAL_GAS_FRACTION = Measured.of(0.6, 0.15);

    /**
     * A case whose igniter nobody describes.
     *
     * @param casePressureLimit as stated [Pa, gauge]
     * @param safetyFactor      [1]
     */
    public Hardware(OptionalDouble casePressureLimit, double safetyFactor) {
        this(casePressureLimit, safetyFactor, Optional.empty(), USUAL_GAS_FRACTION);
    }

    /**
     * The gas of a starter charge.
     *
     * @param mass of the charge [kg], with the uncertainty of a scale where none is stated
     * @return mass of its gas [kg], with its standard uncertainty
     */
    public Measured igniterGas(Measured mass) {
        double share = igniterGasFraction.value();
        double relative = Math.hypot(
                mass.stdOr(0.02 * mass.value()) / mass.value(), igniterGasFraction.stdOr(0.05 * share) / share);
        return Measured.of(share * mass.value(), share * mass.value() * relative);
    }
}
