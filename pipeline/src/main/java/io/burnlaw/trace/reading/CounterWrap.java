package io.burnlaw.trace.reading;

import java.util.Arrays;
import java.util.Optional;

/**
 * A counter of microseconds or milliseconds that began again at zero because its bits were full: 2^16, 2^24, 2^31 or
 * 2^32. It is continued only where the step over the wrap is as long as the others.
 */
final class CounterWrap {

    private static final double[] FULL = {0x1p16, 0x1p24, 0x1p31, 0x1p32};

    /** The file may show counts as thousandths or millionths: a millisecond counter as seconds. */
    private static final double[] SHOWN_AS = {1, 1e-3, 1e-6};

    /** A step over the wrap is at most so many usual steps: a sample or two may be missing there. */
    private static final double LONGEST_STEP = 3;

    /** A counter that is full after fewer steps than these would have been noticed. */
    private static final double FEWEST_STEPS = 200;

    private static final int LOOKED_AT = 1000;

    private CounterWrap() {}

    /**
     * Continues the times in place.
     *
     * @param time as in the file [its unit]
     * @return a remark; empty where nothing was changed
     */
    static Optional<String> continued(double[] time) {
        double usual = usualStep(time);
        double[] offset = new double[time.length];
        int wraps = 0;
        int first = 0;
        for (int i = 1; i < time.length; i++) {
            offset[i] = offset[i - 1];
            if (time[i] < time[i - 1]) {
                double period = period(time[i - 1], time[i], usual);
                if (!(period > 0)) {
                    return Optional.empty();
                }
                offset[i] += period;
                first = wraps++ == 0 ? i + 1 : first;
            }
        }
        if (wraps == 0) {
            return Optional.empty();
        }
        Arrays.setAll(time, i -> time[i] + offset[i]);
        return Optional.of("the counter of the time began again at zero %s, first at sample %d; it was continued."
                .formatted(wraps == 1 ? "once" : wraps + " times", first));
    }

    private static double period(double before, double after, double usual) {
        for (double full : FULL) {
            for (double shown : SHOWN_AS) {
                double step = after + full * shown - before;
                if (after >= 0
                        && before < full * shown
                        && step > 0
                        && step <= LONGEST_STEP * usual
                        && usual * FEWEST_STEPS < full * shown) {
                    return full * shown;
                }
            }
        }
        return Double.NaN;
    }

    private static double usualStep(double[] time) {
        double[] steps = new double[Math.min(LOOKED_AT, time.length) - 1];
        Arrays.setAll(steps, i -> Math.abs(time[i + 1] - time[i]));
        Arrays.sort(steps);
        return steps[steps.length / 2];
    }
}
