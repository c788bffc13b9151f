package io.burnlaw.reduction.strand;

import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Smoothing;
import java.util.Optional;

/**
 * Begin and end of a strand's burn from the pressure rise in its vessel.
 *
 * <p>Begin: the straight line through the lower third of the rise, drawn back to the level before it; second opinion
 * where the smoothed pressure leaves that level. End: where the line through the upper third of the rise meets the line
 * through what follows; second opinion the highest smoothed pressure. Half of what two opinions differ by bounds each
 * error, taken as rectangular.
 *
 * <p><b>Source.</b> End at the highest pressure: Jones et al., AIAA 2015-4103 (ultrasonic bomb). Lines: common
 * practice, no source.
 *
 * @param begin [s]
 * @param end   [s]
 * @param std   standard uncertainty of the time between [s]
 * @param rise  of the pressure [Pa]
 */
public record StrandTiming(double begin, double end, double std, double rise) {

    /** A rise must exceed the smoothed noise by this many standard deviations. */
    private static final double CLEAR = 12;

    /** The result, or why there is none. */
    public record Search(Optional<StrandTiming> timing, String reason) {}

    public static Search find(double[] time, double[] pressure, double noise) {
        int n = time.length;
        if (n < 30) {
            return new Search(Optional.empty(), "The record has only " + n + " samples.");
        }
        int half = Math.max(1, n / 400);
        double[] smooth = Smoothing.twice(pressure, half);
        int top = 0;
        for (int i = 1; i < n; i++) {
            if (smooth[i] > smooth[top]) {
                top = i;
            }
        }
        double base = smooth[0];
        for (int i = 0; i <= top; i++) {
            base = Math.min(base, smooth[i]);
        }
        double level = levelBefore(time, pressure, smooth, base, top);
        double rise = smooth[top] - level;
        double left = noise / Math.sqrt(2 * half + 1);
        if (!(rise > CLEAR * left) || !(rise > 0)) {
            return new Search(
                    Optional.empty(),
                    Sentence.of(
                            "The pressure rises by %.3g kPa only, its noise is %.3g kPa: the burn cannot be timed by it."
                                    + " Give the times of break wires.",
                            rise / 1e3, noise / 1e3));
        }
        if (top >= n - 1 - 2 * half) {
            return new Search(
                    Optional.empty(),
                    Sentence.of(
                            "The pressure still rises when the record ends at %.4g s: the end of the burn is missing.",
                            time[n - 1]));
        }
        int low = firstAbove(smooth, level + 0.05 * rise, top);
        int third = firstAbove(smooth, level + 0.35 * rise, top);
        int twoThirds = firstAbove(smooth, level + 0.65 * rise, top);
        int high = firstAbove(smooth, level + 0.95 * rise, top);
        Line lower = Line.through(time, pressure, low, Math.max(low + 2, third));
        Line upper = Line.through(time, pressure, twoThirds, Math.max(twoThirds + 2, high));
        double begin = lower.slope() > 0 ? lower.timeAt(level) : time[low];
        int leaving = firstAbove(smooth, level + Math.max(4 * left, 0.01 * rise), top);
        double burn = time[top] - begin;
        int after = top + half;
        int until = after;
        while (until < n - 1 && (time[until] < time[top] + 0.07 * burn || until - after < 12)) {
            until++;
        }
        double end = time[top];
        if (until - after >= 4) {
            Line falling = Line.through(time, pressure, after, until);
            double meeting = upper.meets(falling);
            if (Math.abs(meeting - time[top]) < 0.1 * burn) {
                end = meeting;
            }
        }
        double beginStd = Math.abs(begin - time[leaving]) / 2 / Math.sqrt(3);
        double endStd = Math.abs(end - time[top]) / 2 / Math.sqrt(3);
        double step = (time[n - 1] - time[0]) / (n - 1);
        double std = Math.sqrt(beginStd * beginStd + endStd * endStd + step * step / 6);
        if (!(end > begin)) {
            return new Search(Optional.empty(), "The pressure rise begins and ends at the same time.");
        }
        return new Search(Optional.of(new StrandTiming(begin, end, std, rise)), "");
    }

    /** Mean before the line through the lower third of the rise meets it; found in three passes, each from the last. */
    private static double levelBefore(double[] time, double[] pressure, double[] smooth, double base, int top) {
        double level = base;
        for (int pass = 0; pass < 3; pass++) {
            double rise = smooth[top] - level;
            int low = firstAbove(smooth, level + 0.05 * rise, top);
            int third = firstAbove(smooth, level + 0.35 * rise, top);
            Line lower = Line.through(time, pressure, low, Math.max(low + 2, third));
            double begin = lower.slope() > 0 ? lower.timeAt(level) : time[low];
            double margin = 0.02 * (time[top] - begin);
            int until = 0;
            while (until < low && time[until] < begin - margin) {
                until++;
            }
            level = mean(pressure, 0, Math.max(1, until));
        }
        return level;
    }

    private static int firstAbove(double[] values, double level, int last) {
        int i = last;
        while (i > 0 && values[i - 1] >= level) {
            i--;
        }
        return i;
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }

    /** A least-squares line. */
    private record Line(double time, double value, double slope) {

        static Line through(double[] time, double[] values, int from, int end) {
            // where the highest reading is the last one, fewer are left
            int to = Math.min(end, values.length);
            double meanTime = mean(time, from, to);
            double meanValue = mean(values, from, to);
            double xx = 0;
            double xy = 0;
            for (int i = from; i < to; i++) {
                xx += (time[i] - meanTime) * (time[i] - meanTime);
                xy += (time[i] - meanTime) * (values[i] - meanValue);
            }
            return new Line(meanTime, meanValue, xx > 0 ? xy / xx : 0);
        }

        double timeAt(double level) {
            return time + (level - value) / slope;
        }

        double meets(Line other) {
            return (other.value - other.slope * other.time - value + slope * time) / (slope - other.slope);
        }
    }
}
