package io.burnlaw.campaign;

/**
 * How laws are fitted.
 *
 * @param confidence level of all intervals [1], between 0.5 and 0.999
 * @param seed       of every random number
 * @param weighting  of the points
 * @param robust     whether a Huber fit is reported beside the plain one
 */
public record FitSettings(double confidence, long seed, PointWeighting weighting, boolean robust) {

    /** How the points are weighted against each other. */
    public enum PointWeighting {
        /** Constant coefficient of variation of the rate. */
        PROPORTIONAL,
        /** Constant scatter of the rate. */
        CONSTANT,
        /** By the standard uncertainties of the points. */
        MEASURED
    }

    /** {@return the settings that hold where the campaign says nothing} */
    public static FitSettings defaults() {
        return new FitSettings(0.95, 20260101L, PointWeighting.PROPORTIONAL, false);
    }
}
