package io.burnlaw.reduction.events;

/**
 * Web burnout where the trace bends down most: the extreme of the negative second derivative at the begin of the
 * tail-off.
 *
 * <p><b>Source.</b> Knee rule, common practice, no source.
 */
public final class MaximumCurvature {

    private MaximumCurvature() {}

    /**
     * Finds the burnout.
     *
     * @return place in cells
     */
    public static double find(TailOffKnee knee) {
        double[] g = knee.gauge();
        int h = Math.max(1, knee.half());
        int best = -1;
        double least = Double.MAX_VALUE;
        for (int i = Math.max(h, knee.levelTo()); i <= Math.min(knee.steepest(), g.length - 1 - h); i++) {
            double bend = g[i - h] - 2 * g[i] + g[i + h];
            if (bend < least) {
                least = bend;
                best = i;
            }
        }
        if (best <= 0 || best - h < 1 || best + h > g.length - 2) {
            return knee.steepest();
        }
        // Vertex of the parabola through the three bends around the extreme: finer than a cell.
        double left = g[best - 1 - h] - 2 * g[best - 1] + g[best - 1 + h];
        double right = g[best + 1 - h] - 2 * g[best + 1] + g[best + 1 + h];
        double curve = left - 2 * least + right;
        return curve > 0 ? best + Math.max(-1, Math.min(1, 0.5 * (left - right) / curve)) : best;
    }
}
