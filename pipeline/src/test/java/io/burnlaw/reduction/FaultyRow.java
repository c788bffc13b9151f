package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.quantity.Measured;
import java.util.Optional;

/**
 * A row of a log in which somebody wrote another figure.
 *
 * @param row as written
 */
record FaultyRow(Firing row) {

    static FaultyRow of(Firing row) {
        return new FaultyRow(row);
    }

    FaultyRow throat(double diameter) {
        return with(Measured.of(diameter, 0.02e-3), row.throatDiameterAfter(), row.propellantMass());
    }

    FaultyRow throatAfter(double diameter) {
        return with(row.throatDiameter(), Optional.of(Measured.of(diameter, 0.02e-3)), row.propellantMass());
    }

    FaultyRow mass(double mass) {
        return with(row.throatDiameter(), row.throatDiameterAfter(), Optional.of(Measured.of(mass, 0.002 * mass)));
    }

    FaultyRow chamber(double volume) {
        return with(
                row.throatDiameter(),
                row.throatDiameterAfter(),
                row.propellantMass(),
                Optional.of(Measured.of(volume)));
    }

    private FaultyRow with(Measured throat, Optional<Measured> after, Optional<Measured> mass) {
        return with(throat, after, mass, row.chamberVolume());
    }

    private FaultyRow with(
            Measured throat, Optional<Measured> after, Optional<Measured> mass, Optional<Measured> chamber) {
        return new FaultyRow(new Firing(
                row.id(),
                row.formulation(),
                row.trace(),
                row.burnTime(),
                row.pulsed(),
                row.grain(),
                throat,
                after,
                row.exitDiameter(),
                mass,
                row.igniterGas(),
                row.grainTemperature(),
                row.ambientPressure(),
                chamber,
                row.setAside(),
                row.note(),
                row.settings(),
                row.row()));
    }
}
