package io.burnlaw.reduction.events;

import java.util.Optional;

/**
 * A stretch before the last main rise, behind the first sign of burning: the motor burned, but slowly; or nothing could be
 * seen in it, behind an igniter's pulse or a part of the surface that burned out.
 *
 * @param from   first cell
 * @param to     last cell
 * @param mean   mean pressure over ambient in it [Pa]
 * @param alight whether it burned throughout
 */
record Dwell(int from, int to, double mean, boolean alight) {

    /** A dwell lasts at least this share of the operation. */
    private static final double SHORTEST = 0.06;

    /** A rise after this share of the pressure integral is no longer looked for: too little is left to burn [1]. */
    private static final double LATEST = 0.85;

    /** A dwell is alight for more than this share of it [1]. */
    private static final double LIT = 0.8;

    /** A rise by this much or more begins near ambient pressure [1]: the burn did not only pause. */
    private static final double FROM_AMBIENT = 8;

    /** The main rise multiplies the pressure at least by this ... */
    private static final double RISE = 1.7;

    /** ... within twice this share of the operation: no grain gets more surface as fast. */
    private static final double WITHIN = 0.02;

    /**
     * Looks for a dwell.
     *
     * @param gauge smoothed pressure over ambient, by cell [Pa], from the first sign of burning on
     * @param from  cell of the first sign of burning
     * @param to    cell of the end of operation
     * @param floor pressure over ambient below which nothing is known [Pa]
     * @return the dwell; empty where the motor came up at once
     */
    static Optional<Dwell> find(double[] gauge, int from, int to, double floor) {
        int span = to - from;
        int reach = Math.max(2, (int) (WITHIN * span));
        double whole = 0;
        for (int i = from; i <= to; i++) {
            whole += Math.max(0, gauge[i]);
        }
        double sum = 0;
        double best = RISE;
        int rise = -1;
        for (int i = from; i + reach <= to && sum < LATEST * whole; i++) {
            sum += Math.max(0, gauge[i]);
            if (i - from < SHORTEST * span || i - reach < 0) {
                continue;
            }
            double before = Math.max(floor, gauge[i - reach]);
            double ratio = gauge[i + reach] / before;
            if (ratio > best) {
                best = ratio;
                rise = i;
            }
        }
        if (rise < 0) {
            return Optional.empty();
        }
        int last = rise - reach;
        double mean = 0;
        int lit = 0;
        for (int i = from; i <= last; i++) {
            mean += gauge[i];
            lit += gauge[i] > floor ? 1 : 0;
        }
        int length = Math.max(1, last - from + 1);
        mean /= length;
        // An igniter that went out again before the grain took fire is a hang-fire, and nothing burned in the wait.
        boolean alight = mean > floor && lit > LIT * length;
        return alight || best > FROM_AMBIENT
                ? Optional.of(new Dwell(from, last, alight ? mean : Math.max(0, gauge[last]), alight))
                : Optional.empty();
    }
}
