package io.burnlaw.trace;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * The level stretches of a record before the first sign of burning and after the last one, and the range between.
 *
 * @param before before the first sign of burning; empty where the record begins too late
 * @param after  after the end of operation; empty where the record ends too early
 * @param range  highest smoothed reading above the quiet one
 * @param rise   index of the first sample above a tenth of the range; the size of the record where nothing rises
 * @param fall   index after the last sample above a tenth of the range, or of the working level after a strong igniter
 * @param smoulders whether something burned on behind the main burn, until {@code after} begins
 */
record QuietParts(Optional<Level> before, Optional<Level> after, double range, int rise, int fall, boolean smoulders) {

    /** Share of the range at which something has certainly begun [1]. */
    private static final double BEGUN = 0.1;

    /** Below this share of the range a change of level is no sign of burning [1]. */
    private static final double STEADY = 0.003;

    /** More than this share of the range is never taken for a quiet part's own drift, before and after the burn [1]. */
    private static final double WANDERING_BEFORE = 0.03;

    private static final double WANDERING_AFTER = 0.06;

    /** A residual level after the burn above this share of the range is burning, not drift [1]. */
    private static final double RESIDUAL = 0.15;

    private static final int LEAST_SAMPLES = 3;

    /** From so many samples before the rise on, their own scatter is known. */
    private static final int ENOUGH = 20;

    /** Shorter than this share of the burn, what lies before the rise may be its own foot [1]. */
    private static final double LEAST_LENGTH = 0.01;

    /**
     * A level stretch.
     *
     * @param std   standard uncertainty of it, from the scatter of its blocks
     * @param time  its middle [s]
     * @param to    index after the last
     */
    record Level(double value, double std, double time, int from, int to) {}

    static QuietParts find(double[] time, double[] values) {
        int n = values.length;
        double noise = Scatter.fastStd(values, 0, n);
        int half = Math.max(1, n / 2000);
        double[] smooth = Scatter.runningMean(RunningMedian.ofFive(values), half);
        double low = lowest(smooth);
        double high = Double.NEGATIVE_INFINITY;
        for (double value : smooth) {
            high = Math.max(high, value);
        }
        double range = high - low;
        // The highest of n smoothed samples of pure noise stays below five of its standard deviations for any n here.
        if (n < LEAST_SAMPLES || !(range > 10 * noise / Math.sqrt(3)) || !(range > 0)) {
            return new QuietParts(
                    n == 0 ? Optional.empty() : Optional.of(level(time, values, 0, n)),
                    Optional.empty(),
                    range,
                    n,
                    n,
                    false);
        }
        int rise = 0;
        while (smooth[rise] < low + BEGUN * range) {
            rise++;
        }
        double usual = WorkingLevel.of(smooth, low, range);
        double alight = Math.min(BEGUN * range, Math.max(BEGUN * usual, 10 * noise / Math.sqrt(2 * half + 1.0)));
        int fall = n;
        while (smooth[fall - 1] < low + alight) {
            fall--;
        }
        // Where much of the burn stands still at the sensor's limit the whole record looks quieter than it is.
        double noiseBefore = rise < ENOUGH ? noise : Math.max(noise, Scatter.fastStd(values, 0, rise));
        int quietEnd = QuietStep.cut(values, reach(values, 0, rise, 1, noiseBefore, range), range);
        Optional<Level> before = quietEnd >= Math.max(LEAST_SAMPLES, LEAST_LENGTH * (fall - rise))
                ? Optional.of(level(time, values, 0, quietEnd))
                : Optional.empty();
        int reached = n - reach(values, n - 1, n - fall, -1, noise, range);
        boolean spiked = usual < range && before.isPresent() && n - reached >= LEAST_SAMPLES;
        int quietStart = spiked && !settled(values, reached, noise, range)
                ? rest(values, smooth, reached, before.get().value(), noise, usual)
                : reached;
        Optional<Level> after = n - quietStart >= LEAST_SAMPLES && settled(values, quietStart, noise, range)
                ? Optional.of(level(time, values, quietStart, n))
                        .filter(tail ->
                                Math.abs(tail.value() - before.map(Level::value).orElse(low)) < RESIDUAL * range)
                : Optional.empty();
        QuietParts found = new QuietParts(before, after, range, rise, fall, false);
        OptionalInt end =
                before.isPresent() ? QuietStep.end(values, fall, before.get().value(), range) : OptionalInt.empty();
        return end.isPresent()
                ? new QuietParts(before, Optional.of(level(time, values, end.getAsInt(), n)), range, rise, fall, true)
                : found;
    }

    /** The level that a twentieth of the samples lie below: the quiet one, wherever it stands in the record. */
    private static double lowest(double[] smooth) {
        return QuickSelect.at(smooth, 0, smooth.length, smooth.length / 20);
    }

    /** How many samples from {@code start} in {@code direction}, of {@code available}, stay at one level. */
    private static int reach(double[] values, int start, int available, int direction, double noise, double range) {
        int block = Math.max(available < 40 ? 2 : 4, available / 100);
        int blocks = available / block;
        if (blocks == 0) {
            return 0;
        }
        double[] levels = new double[blocks];
        int steady = 0;
        while (steady < blocks) {
            int near = start + direction * steady * block;
            int far = start + direction * ((steady + 1) * block - 1);
            levels[steady] = Scatter.median(values, Math.min(near, far), Math.max(near, far) + 1);
            if (steady > 0) {
                double local = Scatter.median(levels, Math.max(0, steady - 8), steady);
                double allowed = Math.max(6 * noise / Math.sqrt(block), STEADY * range);
                boolean left = Math.abs(levels[steady] - local) > allowed
                        || Math.abs(levels[steady] - levels[0])
                                > (direction > 0 ? WANDERING_BEFORE : WANDERING_AFTER) * range + allowed;
                if (left) {
                    break;
                }
            }
            steady++;
        }
        // The last level block may already hold the first sign.
        int kept = steady >= 3 && steady < blocks ? steady - 1 : steady;
        return kept == blocks && steady == blocks ? Math.max(0, available - block) : kept * block;
    }

    /**
     * Whether the stretch from an index to the end is at rest, not the last of a tail-off: a drift goes on evenly, a
     * tail-off bends.
     */
    private static boolean settled(double[] values, int from, double noise, double range) {
        int n = values.length;
        int third = (n - from) / 3;
        double first = Scatter.median(values, from, from + third);
        double middle = Scatter.median(values, from + third, n - third);
        double last = Scatter.median(values, n - third, n);
        double allowed = Math.max(6 * noise / Math.sqrt(third), STEADY * range);
        return Math.abs(0.5 * (first + last) - middle) < allowed
                && Math.abs(last - first) < WANDERING_AFTER * range + allowed;
    }

    /**
     * Where the last rest of a record begins that ends with a long tail-off: behind a strong igniter the stretch that passes
     * for quiet may reach far into it. A tail-off itself is none: at rest the record stays for as long as half of the time in
     * which it fell from four times the level to there, and moves less.
     *
     * @return its first index; the size of the record where there is none
     */
    private static int rest(double[] values, double[] smooth, int from, double zero, double noise, double usual) {
        int n = values.length;
        for (int start = from; n - start >= ENOUGH; start += (n - start) / 8 + 1) {
            double level = Scatter.median(values, start, n) - zero;
            int fourfold = start;
            while (fourfold > 0 && smooth[fourfold] - zero < 4 * level) {
                fourfold--;
            }
            if (2 * (n - start) >= start - fourfold && settled(values, start, noise, Math.min(usual, 4 * level))) {
                return start;
            }
        }
        return n;
    }

    private static Level level(double[] time, double[] values, int from, int to) {
        int blocks = Math.min(16, (to - from) / 4);
        double centre = Scatter.median(values, from, to);
        double white = 1.2533 * Scatter.std(values, from, to, centre) / Math.sqrt(to - from);
        double std = white;
        if (blocks >= 4) {
            double[] medians = new double[blocks];
            for (int b = 0; b < blocks; b++) {
                int first = from + (int) ((long) (to - from) * b / blocks);
                int after = from + (int) ((long) (to - from) * (b + 1) / blocks);
                medians[b] = Scatter.median(values, first, after);
            }
            // Hum and slow wandering leave the blocks further apart than white noise would.
            std = Math.max(white, Scatter.std(medians, 0, blocks) / Math.sqrt(blocks));
        }
        return new Level(centre, std, 0.5 * (time[from] + time[to - 1]), from, to);
    }
}
