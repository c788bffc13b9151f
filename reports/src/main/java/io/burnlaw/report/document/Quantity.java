package io.burnlaw.report.document;

import org.jspecify.annotations.Nullable;

/**
 * A value with its unit and, where known, its standard uncertainty and interval.
 *
 * @param value the value
 * @param unit UCUM code; absent for pure numbers
 * @param low lower end of its interval, same unit
 * @param high upper end of its interval, same unit
 * @param level confidence of the interval [1]
 * @param std standard uncertainty, same unit
 */
public record Quantity(
        double value,
        @Nullable String unit,
        @Nullable Double low,
        @Nullable Double high,
        @Nullable Double level,
        @Nullable Double std) {

    /**
     * A value without an uncertainty.
     *
     * @param value the value
     * @param unit  UCUM code
     * @return the quantity
     */
    public static Quantity of(double value, String unit) {
        return new Quantity(value, unit, null, null, null, null);
    }

    /**
     * A value with a standard uncertainty.
     *
     * @param value the value
     * @param unit  UCUM code
     * @param std   standard uncertainty, same unit
     * @return the quantity
     */
    public static Quantity of(double value, String unit, double std) {
        return new Quantity(value, unit, null, null, null, std);
    }
}
