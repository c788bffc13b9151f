package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * A hollow cylinder that burns at its core and on its outside; its ends do not burn. What the outside loses the core
 * gains, so the surface is level: S = pi (D + d) L.
 *
 * @param outerDiameter [m]
 * @param coreDiameter  [m], less than outerDiameter
 * @param length        [m]
 */
public record BothSidesTube(Measured outerDiameter, Measured coreDiameter, Measured length) implements Grain {

    public BothSidesTube {
        if (!(coreDiameter.value() > 0 && outerDiameter.value() > coreDiameter.value() && length.value() > 0)) {
            throw new IllegalArgumentException("no tube: outer diameter " + outerDiameter.value() + " m, core "
                    + coreDiameter.value() + " m, length " + length.value() + " m");
        }
    }

    @Override
    public double surface(double burned) {
        return burned < web().value() ? Math.PI * (outerDiameter.value() + coreDiameter.value()) * length.value() : 0;
    }

    @Override
    public double volume(double burned) {
        return surface(burned) * (web().value() - burned);
    }

    @Override
    public Measured web() {
        return Webs.part(Webs.halfDifference(outerDiameter, coreDiameter), 2);
    }

    @Override
    public OptionalDouble envelope() {
        return OptionalDouble.of(Math.PI / 4 * outerDiameter.value() * outerDiameter.value() * length.value());
    }
}
