package io.burnlaw.planning;

/**
 * A twist drill.
 *
 * @param series   of the standard
 * @param name     as stamped
 * @param diameter nominal [m]
 */
public record Drill(Series series, String name, double diameter) {

    /** How twist drills are named. */
    public enum Series {
        /** Millimetres. */
        METRIC,
        /** Numbered gauge sizes. */
        NUMBER,
        /** Letter sizes. */
        LETTER,
        /** Fractions of an inch. */
        FRACTION
    }
}
