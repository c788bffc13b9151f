package io.burnlaw.quantity;

import java.util.OptionalDouble;

/**
 * A number with its unit as somebody wrote it, such as {@code 1.80 ± 0.01 g/cm3}.
 *
 * @param value in the unit; finite
 * @param std   standard uncertainty in the same unit, at least zero; empty where none was written
 * @param unit  as written
 */
public record Quantity(double value, OptionalDouble std, Unit unit) {

    /** {@return the quantity in SI} */
    public Measured si() {
        double si = unit.toSi(value);
        return std.isPresent() ? Measured.of(si, unit.differenceToSi(std.getAsDouble())) : Measured.of(si);
    }

    /**
     * Reads a quantity with its unit: {@code 12.7 mm}, {@code 12,7 mm}, {@code 1.80 ± 0.01 g/cm3},
     * {@code 1.80 g/cm3 +/- 0.5 %}, {@code (1.80 ± 0.01) g/cm3}.
     *
     * @param text      as written
     * @param dimension what is expected
     * @return the quantity, or what is wrong with the text
     */
    public static QuantityReading read(String text, Dimension dimension) {
        return new QuantityText(text, dimension, null).read();
    }

    /**
     * Reads a table's cell: a number in the unit of its heading, or a quantity with a unit of its own.
     *
     * @param text as written
     * @param unit of the heading
     * @return the quantity, or what is wrong with the text
     */
    public static QuantityReading read(String text, Unit unit) {
        return new QuantityText(text, unit.dimension(), unit).read();
    }
}
