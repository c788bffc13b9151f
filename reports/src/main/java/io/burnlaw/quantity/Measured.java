package io.burnlaw.quantity;

import java.util.OptionalDouble;

/**
 * A value in SI with its standard uncertainty, where one is known.
 *
 * @param value the value, in the SI unit that the holder's javadoc names; finite
 * @param std   its standard uncertainty in the same unit, at least zero; empty where nobody stated one
 */
public record Measured(double value, OptionalDouble std) {

    public Measured {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a measured value is finite, not " + value);
        }
        if (std.isPresent() && !(std.getAsDouble() >= 0 && Double.isFinite(std.getAsDouble()))) {
            throw new IllegalArgumentException("a standard uncertainty is at least zero, not " + std.getAsDouble());
        }
    }

    /**
     * A value whose uncertainty nobody stated.
     *
     * @param value the value in SI
     * @return the value without an uncertainty
     */
    public static Measured of(double value) {
        return new Measured(value, OptionalDouble.empty());
    }

    /**
     * A value with a stated standard uncertainty.
     *
     * @param value the value in SI
     * @param std   its standard uncertainty in the same unit
     * @return the value with its uncertainty
     */
    public static Measured of(double value, double std) {
        return new Measured(value, OptionalDouble.of(std));
    }

    /**
     * The standard uncertainty, or what is usual for the instrument where none was stated.
     *
     * @param usual the standard uncertainty to take where none was stated, same unit as the value
     */
    public double stdOr(double usual) {
        return std.orElse(usual);
    }

    /** {@return whether the standard uncertainty is larger than the value itself, so that nothing was measured} */
    public boolean isVague() {
        return std.isPresent() && std.getAsDouble() > Math.abs(value);
    }
}
