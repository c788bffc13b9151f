package io.burnlaw.campaign;

import io.burnlaw.quantity.NumberFormat;
import java.util.OptionalDouble;

/**
 * The highest pressure that an advice may name. Every text, page and document that says where to fire uses this limit.
 *
 * <p>With a stated limit of the case: up to that limit over its safety factor. Without one the strength of the case is
 * unknown: not above the highest pressure fired in it.
 *
 * @param allowed the case limit over its safety factor [Pa, absolute]; empty where no limit is stated
 */
public record PressureLimit(OptionalDouble allowed) {

    /** No limit is stated. */
    public static final PressureLimit UNSTATED = new PressureLimit(OptionalDouble.empty());

    /** By which a peak usually lies above the mean of its burn [1]: common practice, no source. */
    private static final double PEAK_OVER_MEAN = 1.25;

    /**
     * The limit of a case.
     *
     * @param hardware what is stated of it
     * @param ambient  [Pa, absolute]
     */
    public static PressureLimit of(Hardware hardware, double ambient) {
        return hardware.casePressureLimit().isPresent()
                ? new PressureLimit(OptionalDouble.of(
                        ambient + hardware.casePressureLimit().getAsDouble() / hardware.safetyFactor()))
                : UNSTATED;
    }

    /**
     * The highest pressure that may be reached.
     *
     * @param fired highest pressure fired so far [Pa, absolute]
     * @return [Pa, absolute]
     */
    public double ceiling(double fired) {
        return allowed.orElse(fired);
    }

    /**
     * Whether an advice may name a mean pressure: the peak that usually goes with it must be allowed too, unless it was
     * fired before and no limit is stated.
     *
     * @param mean  [Pa, absolute]
     * @param fired highest mean pressure fired so far [Pa, absolute]
     */
    public boolean allowsMean(double mean, double fired) {
        return allowed.isPresent() ? PEAK_OVER_MEAN * mean <= allowed.getAsDouble() : mean <= fired;
    }

    /** {@return the limit in words, such as "4.77 MPa, the case limit over its safety factor"} */
    public String inWords() {
        return allowed.isPresent()
                ? NumberFormat.megapascal(allowed.getAsDouble())
                        + " MPa absolute, the case limit over its safety factor"
                : "an unstated case limit";
    }
}
