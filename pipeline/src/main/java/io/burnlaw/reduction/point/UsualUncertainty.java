package io.burnlaw.reduction.point;

import io.burnlaw.quantity.Measured;

/**
 * Standard uncertainties that are used where the log states none. All of them: common practice, no source. They are in
 * the budget of every point that uses them.
 */
public final class UsualUncertainty {

    /** Of a web from two calipered diameters [m]. */
    public static final double WEB = 0.03e-3;

    /** The part of it that all firings share, because it is the same caliper [m]. */
    public static final double CALIPER = 0.01e-3;

    /** Of a throat diameter [m]. */
    public static final double THROAT = 0.02e-3;

    /** Of a throat diameter after the firing, where it was not measured, as a share of the diameter [1]. */
    public static final double UNMEASURED_THROAT = 0.003;

    /** Of a propellant mass, as a share of it [1]. */
    public static final double MASS = 0.003;

    /** Of the gas of an igniter that was not stated, as a share of the propellant's mass [1]. */
    public static final double IGNITER = 0.008;

    /** Of a density [kg/m3 over kg/m3]. */
    public static final double DENSITY = 0.01;

    /** Of a pressure sensor's gain, as a share of the highest pressure read [1]. */
    public static final double SENSOR = 0.005;

    /** Of a chamber volume that was measured, as a share of it [1]. */
    public static final double CHAMBER = 0.03;

    /** Of a free volume that was worked out from the grain, as a share of the chamber [1]. */
    public static final double DERIVED_CHAMBER = 0.1;

    /** Of the ratio of specific heats [1]. */
    public static final double SPECIFIC_HEAT_RATIO = 0.03;

    /** Of a propellant of which neither mass nor density is known [kg/m3]; only the gas density term rests on it. */
    public static final double NOMINAL_DENSITY = 1800;

    /** What the reduction itself does to a rate whatever the firing, as a share of it [1]; see docs/validation.md. */
    public static final double METHOD = 0.0015;

    /** c* of a propellant for which none was measured, and its spread [m/s]: sugar propellants, common practice, no source. */
    public static final Measured VELOCITY = Measured.of(870, 70);

    /** Of {@link #NOMINAL_DENSITY} [kg/m3]. */
    public static final double NOMINAL_DENSITY_STD = 100;

    /**
     * Of a burn time read off a video or a stopwatch, without the question of what begins and ends it.
     *
     * @param time [s]
     * @return [s]
     */
    public static double timing(double time) {
        return Math.max(0.05, 0.01 * time);
    }

    /**
     * Of the burn time because the first and the last flame are not the ignition and the burnout of the mean web, as a share
     * of it [1]. The same eye errs alike each time: all of it is shared.
     */
    public static final double FLAME = 0.025;

    private UsualUncertainty() {}
}
