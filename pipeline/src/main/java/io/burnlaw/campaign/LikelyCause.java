package io.burnlaw.campaign;

import io.burnlaw.quantity.Sentence;
import java.util.Optional;

/**
 * The most likely mistake behind an impossible number, in a few words. The mistakes are common ones (common practice,
 * no source); only the owner of the log can say which one it was.
 */
public enum LikelyCause {
    /** Volume goes with the square of the diameters. */
    RADII(4, "the diameters are radii"),
    /** One figure too many before the point. */
    SLIPPED_POINT_UP(10, "the mass has a slipped decimal point"),
    /** One figure too few. */
    SLIPPED_POINT_DOWN(0.1, "the mass has a slipped decimal point"),
    /** All three lengths. */
    CENTIMETRES(1000, "the lengths are in cm, not mm (or the mass in mg)"),
    /** Grams and kilograms. */
    KILOGRAMS(0.001, "the mass is in kg, not g"),
    /** Avoirdupois ounces. */
    OUNCES(1 / 28.349523125, "the mass is in oz, not g"),
    /** Avoirdupois pounds. */
    POUNDS(1 / 453.59237, "the mass is in lb, not g"),
    /** All three lengths. */
    INCHES(25.4 * 25.4 * 25.4, "the lengths are in inches, not mm");

    /** Of sugar propellants [kg/m3]: it chooses words only, and reaches no result. From memory. */
    public static final double USUAL_DENSITY = 1800;

    /** A factor that comes as near as this is that of the slip [1]. */
    private static final double NEAR = 0.12;

    private final double factor;
    private final String words;

    LikelyCause(double factor, String words) {
        this.factor = factor;
        this.words = words;
    }

    /**
     * Why a mass does not fit its grain.
     *
     * @param ratio    mass over density times volume [1]
     * @param segments of the grain in the log
     * @return such as {@code most likely the diameters are radii}; empty where no single slip explains it
     */
    public static Optional<String> ofMass(double ratio, int segments) {
        String best = "";
        double least = NEAR;
        if (segments > 1 && off(ratio * segments) < least) {
            least = off(ratio * segments);
            best = "the segment length is that of all " + segments + " segments";
        }
        for (LikelyCause cause : values()) {
            if (off(ratio / cause.factor) < least) {
                least = off(ratio / cause.factor);
                best = cause.words;
            }
        }
        long other = Math.round(segments * ratio);
        boolean anotherNumber = other > 0 && other != segments && other <= 3L * segments + 3;
        if (anotherNumber && off(ratio * segments / other) < Math.min(least, NEAR / 4)) {
            best = "there were " + other + " segments, not " + segments;
        }
        return best.isEmpty() ? Optional.empty() : Optional.of("most likely " + best);
    }

    /**
     * Why a mass does not fit its grain, where the core is right.
     *
     * @param ratio mass over what the grain would weigh with twice the outer diameter [1]
     * @return the slip; empty where it does not explain the mass
     */
    public static Optional<String> ofOuterDiameter(double ratio) {
        return off(ratio) < NEAR ? Optional.of("most likely the outer diameter is a radius") : Optional.empty();
    }

    /**
     * Why a throat does not fit its grain.
     *
     * @param throat diameter [m], not below that of the grain
     * @param outer  diameter of the grain [m]
     * @return the slip with the throat that it would be; empty where it explains nothing
     */
    public static Optional<String> ofThroat(double throat, double outer) {
        if (throat / 10 < outer / 2) {
            return Optional.of(Sentence.of("most likely a slipped decimal point: %.3g mm", 1e3 * throat / 10));
        }
        return throat / 25.4 < outer / 2
                ? Optional.of(Sentence.of("most likely mm written as inches: %.3g mm", 1e3 * throat / 25.4))
                : Optional.empty();
    }

    private static double off(double ratio) {
        return Math.abs(Math.log(ratio));
    }
}
