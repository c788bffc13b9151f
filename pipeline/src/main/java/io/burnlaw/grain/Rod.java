package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * A full cylinder that burns on its outside; its ends do not burn.
 *
 * @param diameter [m]
 * @param length   [m]
 */
public record Rod(Measured diameter, Measured length) implements Grain {

    public Rod {
        if (!(diameter.value() > 0 && length.value() > 0)) {
            throw new IllegalArgumentException(
                    "no rod: diameter " + diameter.value() + " m, length " + length.value() + " m");
        }
    }

    @Override
    public double surface(double burned) {
        return 2 * Math.PI * radiusLeft(burned) * length.value();
    }

    @Override
    public double volume(double burned) {
        return Math.PI * radiusLeft(burned) * radiusLeft(burned) * length.value();
    }

    @Override
    public Measured web() {
        return Webs.part(diameter, 2);
    }

    @Override
    public OptionalDouble envelope() {
        return OptionalDouble.of(volume(0));
    }

    private double radiusLeft(double burned) {
        return Math.max(0, diameter.value() / 2 - burned);
    }
}
