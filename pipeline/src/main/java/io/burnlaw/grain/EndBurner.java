package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * A full cylinder that burns from one end to the other; its web is its length.
 *
 * @param diameter [m]
 * @param length   [m]
 */
public record EndBurner(Measured diameter, Measured length) implements Grain {

    public EndBurner {
        if (!(diameter.value() > 0 && length.value() > 0)) {
            throw new IllegalArgumentException(
                    "no end burner: diameter " + diameter.value() + " m, length " + length.value() + " m");
        }
    }

    @Override
    public double surface(double burned) {
        return burned < length.value() ? Math.PI / 4 * diameter.value() * diameter.value() : 0;
    }

    @Override
    public double volume(double burned) {
        return Math.PI / 4 * diameter.value() * diameter.value() * Math.max(0, length.value() - burned);
    }

    @Override
    public Measured web() {
        return length;
    }

    @Override
    public OptionalDouble envelope() {
        return OptionalDouble.of(volume(0));
    }
}
