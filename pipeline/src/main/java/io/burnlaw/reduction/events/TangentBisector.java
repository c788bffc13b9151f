package io.burnlaw.reduction.events;

import java.util.OptionalDouble;

/**
 * Web burnout by the aft tangent bisector: one tangent to the level part before the tail-off, one to the steepest part
 * of the tail-off; where the bisector of their angle meets the trace the web is taken to have burned out.
 *
 * <p>An angle depends on the scales of the picture. Here time counts in burn times and pressure in highest pressures,
 * so that the answer doesn't depend on the units.
 *
 * <p><b>Source.</b> Burning-time figure of Sutton and Biblarz (2001), chapter 11; the most common rule in practice
 * (common practice, no source).
 */
public final class TangentBisector {

    /** The level tangent spans these shares of the burn before the sharpest bend [1]. */
    private static final double NEAR = 0.02;

    private static final double FAR = 0.12;

    private TangentBisector() {}

    /**
     * Finds the burnout.
     *
     * @return place in cells; empty where the lines do not meet the trace
     */
    public static OptionalDouble find(TailOffKnee knee) {
        double[] g = knee.gauge();
        int n = g.length;
        double cells = knee.scale();
        double top = knee.highest();
        // The level tangent is drawn close before the knee: a trace that bends there would leave one from further off.
        int bend = (int) Math.round(MaximumCurvature.find(knee));
        int levelTo = Math.max(2, (int) (bend - NEAR * cells) - knee.half());
        int levelFrom = Math.max(0, Math.min(levelTo - 2, (int) (bend - FAR * cells) - knee.half()));
        Smoothing.Line level = Smoothing.line(g, levelFrom, levelTo);
        Smoothing.Line fall = Smoothing.line(
                g, Math.max(0, knee.steepest() - knee.half()), Math.min(n - 1, knee.steepest() + knee.half()));
        double mLevel = level.slope() * cells / top;
        double mFall = fall.slope() * cells / top;
        if (!(mFall < mLevel)) {
            return OptionalDouble.empty();
        }
        // Intersection in normalized axes: u = cell / scale, v = gauge / highest.
        double u = (level.at(0) - fall.at(0)) / top / (mFall - mLevel);
        double v = level.at(0) / top + mLevel * u;
        double backLength = Math.hypot(1, mLevel);
        double fallLength = Math.hypot(1, mFall);
        double du = -1 / backLength + 1 / fallLength;
        double dv = -mLevel / backLength + mFall / fallLength;
        double sideBefore = 0;
        double best = Double.NaN;
        double nearest = Double.MAX_VALUE;
        for (int i = levelTo; i < n; i++) {
            double a = i / cells - u;
            double b = g[i] / top - v;
            double side = a * dv - b * du;
            if (i > levelTo && side * sideBefore <= 0 && side != sideBefore && a * du + b * dv > 0) {
                double place = i - 1 + sideBefore / (sideBefore - side);
                double distance = Math.hypot(a, b);
                if (distance < nearest) {
                    nearest = distance;
                    best = place;
                }
            }
            sideBefore = side;
        }
        return Double.isNaN(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
    }
}
