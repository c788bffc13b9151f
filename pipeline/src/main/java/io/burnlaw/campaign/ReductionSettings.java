package io.burnlaw.campaign;

/**
 * How a firing is reduced; see docs/methods.md.
 *
 * @param method            which rate is fitted
 * @param burnoutEvent      which estimate of the web burnout bounds the burn time
 * @param ignitionThreshold share of the highest gauge pressure at which the web is taken to burn [1]
 * @param endThreshold      share of the highest gauge pressure that bounds the action time [1]
 */
public record ReductionSettings(
        Method method, BurnoutEvent burnoutEvent, double ignitionThreshold, double endThreshold) {

    /** Which rate of a firing goes into the law. */
    public enum Method {
        /** Web over burn time. */
        THICKNESS_TIME,
        /** Web over burn time, corrected by the share of the pressure integral in it. */
        MASS_BALANCE,
        /** Rate along the burn from continuity. */
        INSTANTANEOUS
    }

    /** How the web burnout is found. */
    public enum BurnoutEvent {
        /** When the mean web was gone, by the integral of the tail-off. */
        MEAN_WEB,
        /** Bisector of the tangents to the level part and to the tail-off. */
        TANGENT_BISECTOR,
        /** Where the curve bends most. */
        MAXIMUM_CURVATURE
    }

    /** {@return the settings that hold where the campaign says nothing} */
    public static ReductionSettings defaults() {
        return new ReductionSettings(Method.MASS_BALANCE, BurnoutEvent.MEAN_WEB, 0.10, 0.10);
    }
}
