package io.burnlaw.reduction.events;

/**
 * The times of the events of a burn. The letters are those of the field: A begin of operation, B ignition of the web, E
 * web burnout, G end of operation.
 *
 * @param start          A, first sign of burning [s]
 * @param ignition       B, the web begins to burn [s]
 * @param ignitionStd    its standard uncertainty, the two opinions' difference in it [s]
 * @param webBurnout     E, referred to the mean web [s]
 * @param webBurnoutStd  its standard uncertainty, the two opinions' difference in it [s]
 * @param tangentBisector E by the aft tangent bisector, before any correction [s]
 * @param maximumCurvature E by the sharpest bend, before any correction [s]
 * @param end            G, end of operation [s]
 * @param actionStart    share of the highest pressure on the rise, for the action time [s]
 * @param actionEnd      the same on the decay [s]
 */
public record Events(
        double start,
        double ignition,
        double ignitionStd,
        double webBurnout,
        double webBurnoutStd,
        double tangentBisector,
        double maximumCurvature,
        double end,
        double actionStart,
        double actionEnd) {

    /**
     * Of a burn that was timed by eye or ear: its time begins with its ignition, and nothing else is known.
     *
     * @param burnTime [s]
     * @param std      its standard uncertainty [s]
     */
    public static Events timed(double burnTime, double std) {
        return new Events(0, 0, 0, burnTime, std, burnTime, burnTime, burnTime, 0, burnTime);
    }

    /** {@return E less B [s]} */
    public double burnTime() {
        return webBurnout - ignition;
    }

    /** {@return standard uncertainty of the burn time [s]} */
    public double burnTimeStd() {
        return Math.hypot(ignitionStd, webBurnoutStd);
    }

    /** {@return from the rise to the decay [s]} */
    public double actionTime() {
        return actionEnd - actionStart;
    }
}
