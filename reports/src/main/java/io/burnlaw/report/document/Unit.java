package io.burnlaw.report.document;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The units in which pictures and tables are drawn, and how a quantity in another unit of the same kind gets there.
 * Factors are exact by definition (inch 25.4 mm; psi from the pound-force of the NIST Guide to the SI, SP 811, 2008).
 */
public enum Unit {
    /** Megapascal. */
    MPA("MPa", Map.of("MPa", 1.0, "kPa", 1e-3, "Pa", 1e-6, "bar", 0.1, "[psi]", 6.894757293168362e-3, "atm", 0.101325)),
    /** Millimetre a second. */
    MM_PER_S("mm/s", Map.of("mm/s", 1.0, "m/s", 1e3, "cm/s", 10.0, "[in_i]/s", 25.4)),
    /** Millimetre. */
    MM("mm", Map.of("mm", 1.0, "m", 1e3, "cm", 10.0, "[in_i]", 25.4)),
    SECOND("s", Map.of("s", 1.0, "ms", 1e-3)),
    /** Metre a second. */
    M_PER_S("m/s", Map.of("m/s", 1.0, "mm/s", 1e-3, "km/s", 1e3)),
    /** Kelvin; a degree Celsius differs by 273.15 K as a point of the scale. */
    KELVIN("K", Map.of("K", 1.0, "Cel", 1.0));

    private final String code;
    private final Map<String, Double> factors;

    Unit(String code, Map<String, Double> factors) {
        this.code = code;
        this.factors = factors;
    }

    /** {@return its UCUM code} */
    public String code() {
        return code;
    }

    /** {@return the UCUM codes of all units of this kind, in order} */
    Set<String> codes() {
        return new TreeSet<>(factors.keySet());
    }

    /**
     * The value in this unit.
     *
     * @param quantity of the same kind
     * @return its value
     * @throws IllegalArgumentException if its unit is of another kind
     */
    public double value(Quantity quantity) {
        return inThis(quantity, quantity.value());
    }

    /**
     * The lower end of its interval in this unit.
     *
     * @param quantity of the same kind
     * @return the lower end, or null
     */
    public @Nullable Double low(Quantity quantity) {
        return quantity.low() == null ? null : Double.valueOf(inThis(quantity, quantity.low()));
    }

    /**
     * The upper end of its interval in this unit.
     *
     * @param quantity of the same kind
     * @return the upper end, or null
     */
    public @Nullable Double high(Quantity quantity) {
        return quantity.high() == null ? null : Double.valueOf(inThis(quantity, quantity.high()));
    }

    /**
     * The standard uncertainty in this unit.
     *
     * @param quantity of the same kind
     * @return the standard uncertainty, or null
     */
    public @Nullable Double std(Quantity quantity) {
        return quantity.std() == null ? null : Double.valueOf(quantity.std() * factor(quantity));
    }

    /**
     * A quantity in this unit, with its interval and its uncertainty.
     *
     * @param quantity of the same kind, or null
     * @return the same quantity, or null
     */
    public @Nullable Quantity of(@Nullable Quantity quantity) {
        return quantity == null || code.equals(quantity.unit())
                ? quantity
                : new Quantity(value(quantity), code, low(quantity), high(quantity), quantity.level(), std(quantity));
    }

    private double inThis(Quantity quantity, double value) {
        double factor = factor(quantity);
        if (this == KELVIN && "Cel".equals(quantity.unit())) {
            return value + 273.15;
        }
        return factor == 1.0 ? value : value * factor;
    }

    private double factor(Quantity quantity) {
        Double factor = quantity.unit() == null ? null : factors.get(quantity.unit());
        if (factor == null) {
            throw new IllegalArgumentException("unit " + quantity.unit() + " where " + codes() + " is needed");
        }
        return factor;
    }
}
