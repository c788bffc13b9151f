package io.burnlaw.reduction.events;

/**
 * The part of the record that both estimates of the web burnout use: the smoothed record, the level stretch before the
 * tail-off, and the steepest place of it. Arrays are shared inside the package and not written to.
 *
 * @param gauge     smoothed pressure over ambient, by cell [Pa]
 * @param half      half width of the smoothing [cells]
 * @param scale     burn time, roughly [cells]
 * @param highest   highest pressure over ambient [Pa]
 * @param levelFrom first cell of the level stretch
 * @param levelTo   last cell of the level stretch
 * @param steepest  cell of the steepest fall
 */
@SuppressWarnings("ArrayRecordComponent")
public record TailOffKnee(
        double[] gauge, int half, double scale, double highest, int levelFrom, int levelTo, int steepest) {

    /** Shares of the pressure integral between which the level tangent is drawn. */
    private static final double LEVEL_FROM = 0.66;

    private static final double LEVEL_TO = 0.86;

    /**
     * Lays out the search.
     *
     * @param gauge   smoothed pressure over ambient, by cell [Pa]
     * @param half    half width of the smoothing [cells]
     * @param begin   cell at which the web begins to burn
     * @param highest highest pressure over ambient [Pa]
     */
    public static TailOffKnee of(double[] gauge, int half, int begin, double highest) {
        int n = gauge.length;
        double whole = 0;
        for (int i = begin; i < n; i++) {
            whole += gauge[i];
        }
        int from = begin;
        int to = begin;
        double sum = 0;
        for (int i = begin; i < n; i++) {
            sum += gauge[i];
            if (sum <= LEVEL_FROM * whole) {
                from = i;
            }
            if (sum <= LEVEL_TO * whole) {
                to = i;
            }
        }
        to = Math.max(to, from + 2);
        int h = Math.max(1, half);
        int steepest = Math.min(n - 1 - h, to + 1);
        double least = Double.MAX_VALUE;
        for (int i = Math.max(h, to); i < n - h; i++) {
            double fall = gauge[i + h] - gauge[i - h];
            if (fall < least) {
                least = fall;
                steepest = i;
            }
        }
        return new TailOffKnee(
                gauge, half, Math.max(1, to - begin) / 0.85, highest, from, Math.min(to, n - 3), steepest);
    }
}
