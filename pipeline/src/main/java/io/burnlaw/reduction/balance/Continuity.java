package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.Smoothing;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.ArrayList;
import java.util.List;

/**
 * Rate along a burn: the slope of the web burned over time, which the continuity equation with gas storage gives and
 * which is closed on the measured web.
 *
 * <p>The slope is that of a least-squares line over a window of 2.5 % of the burn time to each side (a Savitzky-Golay
 * filter of the first order); structure shorter than that is not shown. Only the valid part is given: after the
 * ignition transient and before the first burn-through.
 *
 * <p><b>Source.</b> Continuity: docs/methods.md, Reduction; filter: Savitzky and Golay (1964).
 */
public final class Continuity {

    private static final int MOST = 160;

    /** Half window, as a share of the burn time [1]. */
    private static final double HALF_WINDOW = 0.025;

    private Continuity() {}

    /**
     * Rates along the burn.
     *
     * @param estimate the firing's mean rates and balance
     * @param ambient  [Pa, absolute]
     * @return in the order of time; empty where too little is left between ignition and burn-through
     */
    public static List<InstantaneousRate> along(RateEstimate estimate, double ambient) {
        MassBalance balance = estimate.balance();
        UniformTrace record = balance.inputs().record();
        double burnTime = estimate.burnout() - estimate.ignition();
        int half = (int) Math.max(2, Math.round(HALF_WINDOW * burnTime / record.step()));
        int first = Math.max(half, record.cell(estimate.firstEven()) + half);
        int last = Math.min(record.size() - 1 - half, record.cell(estimate.lastEven()) - half);
        if (last - first < 2 * half) {
            return List.of();
        }
        double[] web = balance.webs();
        double[] pressure = record.pressures();
        int count = Math.min(MOST, last - first + 1);
        List<InstantaneousRate> along = new ArrayList<>(count);
        for (int k = 0; k < count; k++) {
            int i = first + (int) Math.round((double) k * (last - first) / Math.max(1, count - 1));
            Smoothing.Line line = Smoothing.line(web, i - half, i + half);
            double rate = line.slope() / record.step();
            double p = Smoothing.line(pressure, i - half, i + half).mean();
            if (rate > 0 && p > ambient) {
                along.add(new InstantaneousRate(record.time(i), line.mean(), p, rate));
            }
        }
        return along;
    }
}
