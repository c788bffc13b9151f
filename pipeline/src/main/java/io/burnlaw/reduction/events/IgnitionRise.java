package io.burnlaw.reduction.events;

/**
 * When the web began to burn: where the rise crosses a share of the highest pressure; and as the second opinion where
 * the steepest tangent of the rise, drawn back, meets the pressure that it rose from.
 *
 * <p><b>Source.</b> Threshold: Jones et al., AIAA 2015-4103 (10 % of the highest pressure). Tangent: common practice,
 * no source.
 *
 * @param crossing place where the threshold is crossed [cells]
 * @param tangent  place where the tangent meets the foot [cells]
 */
record IgnitionRise(double crossing, double tangent) {

    /**
     * Times a rise.
     *
     * @param gauge smoothed pressure over ambient, by cell [Pa]
     * @param half  half width of the smoothing [cells]
     * @param from  cell from which to look
     * @param to    cell up to which the rise must have come
     * @param foot  pressure over ambient that it rises from [Pa]
     * @param level pressure over ambient that must be crossed [Pa], above the foot
     * @return the two opinions
     */
    static IgnitionRise find(double[] gauge, int half, int from, int to, double foot, double level) {
        int cross = to;
        // The last crossing before the web burns for good: an igniter's spike before it is none of the web's.
        while (cross > from && gauge[cross - 1] >= level) {
            cross--;
        }
        double before = cross > 0 ? gauge[cross - 1] : gauge[cross];
        double span = gauge[cross] - before;
        double crossing = span > 0 ? cross - 1 + (level - before) / span : cross;
        int h = Math.max(1, half);
        int steepest = Math.max(cross, h);
        double most = -Double.MAX_VALUE;
        for (int i = Math.max(h, cross - h); i <= Math.min(to, gauge.length - 1 - h); i++) {
            double rise = gauge[i + h] - gauge[i - h];
            if (rise > most) {
                most = rise;
                steepest = i;
            }
        }
        double slope = most / (2 * h);
        double tangent = slope > 0 ? steepest - (gauge[steepest] - foot) / slope : crossing;
        return new IgnitionRise(crossing, Math.max(from - 2.0 * h, Math.min(tangent, steepest)));
    }
}
