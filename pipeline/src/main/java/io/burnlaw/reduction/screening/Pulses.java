package io.burnlaw.reduction.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Separate pulses of a stretch of a record: tops with valleys between them, each at least a quarter of the highest top
 * deep on both sides.
 *
 * @param tops   their times [s]
 * @param height median of their heights [Pa, gauge]
 */
record Pulses(List<Double> tops, double height) {

    /** An igniter and a burn are two; chuffing begins with the third. */
    static final int CHUFFING = 3;

    private static final double DEPTH = 0.25;

    /** A valley keeps at most this share of the lower of the tops on its two sides, or the burn never paused [1]. */
    private static final double VALLEY = 0.5;

    static Pulses between(BurnShape shape, int from, int to, double least) {
        double[] smooth = shape.smooth();
        double highest = 0;
        for (int i = from; i < to; i++) {
            highest = Math.max(highest, smooth[i]);
        }
        if (highest < least) {
            return new Pulses(List.of(), 0);
        }
        double depth = Math.max(DEPTH * highest, least / 2);
        List<Integer> tops = new ArrayList<>();
        int top = from;
        int valley = from;
        boolean rising = false;
        for (int i = from; i < to; i++) {
            if (rising) {
                top = smooth[i] > smooth[top] ? i : top;
                if (smooth[top] - smooth[i] > Math.max(depth, (1 - VALLEY) * smooth[top])) {
                    tops.add(top);
                    rising = false;
                    valley = i;
                }
            } else {
                valley = smooth[i] < smooth[valley] ? i : valley;
                if (smooth[i] - smooth[valley] > depth) {
                    rising = true;
                    top = i;
                }
            }
        }
        double[] heights = tops.stream().mapToDouble(i -> smooth[i]).sorted().toArray();
        return new Pulses(
                tops.stream().map(i -> shape.time()[i]).toList(),
                heights.length == 0 ? 0 : heights[heights.length / 2]);
    }

    int count() {
        return tops.size();
    }

    /** Inverse of the median interval between tops [Hz]. */
    double frequency() {
        double[] intervals = new double[tops.size() - 1];
        Arrays.setAll(intervals, k -> tops.get(k + 1) - tops.get(k));
        Arrays.sort(intervals);
        return 1 / intervals[intervals.length / 2];
    }
}
