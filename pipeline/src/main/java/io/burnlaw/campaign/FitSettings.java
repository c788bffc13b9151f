package io.burnlaw.campaign;

/**
 * How laws are fitted.
 *
 * @param confidence level of all intervals [1], between 0.5 and 0.999
 * @param seed       of every random number
 * @param weighting  of the points
 * @param pressure   what is done about the uncertainty of the pressures, where points carry one
 * @param robust     whether a Huber fit is reported beside the plain one
 */
public record FitSettings(
        double confidence, long seed, PointWeighting weighting, PressureTreatment pressure, boolean robust) {

    /** How the points are weighted against each other. */
    public enum PointWeighting {
        /** Constant coefficient of variation of the rate. */
        PROPORTIONAL,
        /** Constant scatter of the rate. */
        CONSTANT,
        /** By the standard uncertainties of the points. */
        MEASURED
    }

    /** What is done about the uncertainty of the pressures. */
    public enum PressureTreatment {
        /** Nothing: pressures count as exact. */
        NONE,
        /** It is carried into the rate along the law's slope. */
        EFFECTIVE_VARIANCE,
        /** Distances to the law are measured in both directions. */
        ORTHOGONAL_DISTANCE
    }

    /** {@return the settings that hold where the campaign says nothing} */
    public static FitSettings defaults() {
        return new FitSettings(
                0.95, 20260101L, PointWeighting.PROPORTIONAL, PressureTreatment.EFFECTIVE_VARIANCE, false);
    }
}
