package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import java.util.Arrays;
import java.util.List;

/**
 * A record that is flat at its highest reading.
 *
 * <p>Readings with noise never repeat their highest value; readings in steps do, but flicker to the steps beside it. So
 * a record is at its limit where its highest value stands in several samples although the noise is finer than the steps
 * of the converter, or where it stands through a run that noise of this size would not leave alone. A record whose
 * steps hide its noise says nothing, unless the full scale is known.
 */
final class Saturation {

    private static final int LEAST = 3;

    /**
     * Share of the samples that jump by more than a whole step against both neighbours [1]. Noise of 0.4 steps gives 1.5 to 4 %,
     * of 0.3 steps 0.1 to 0.8 %, of 0.1 steps none, wherever the level is between two steps (worked out by simulation). Noise
     * of 0.4 steps leaves a step with chance 0.21 a sample: a run of 40 by chance has odds of one in 12,000.
     */
    private static final double FLICKER = 0.01;

    private static final int UNFLICKERING = 40;

    /** Clipped for a larger share of the operation, the mean pressure is no longer known [1]. */
    private static final double HARMLESS = 0.02;

    private Saturation() {}

    static List<Finding> judge(double[] time, double[] values, QuietParts quiet, Channel channel) {
        if (quiet.rise() >= time.length) {
            return List.of();
        }
        int highest = quiet.rise();
        for (int i = quiet.rise(); i < quiet.fall(); i++) {
            highest = values[i] > values[highest] ? i : highest;
        }
        double limit = values[highest];
        int at = 0;
        int run = 0;
        int longest = 0;
        int first = -1;
        int last = -1;
        for (int i = quiet.rise(); i < quiet.fall(); i++) {
            if (values[i] == limit) {
                at++;
                run++;
                longest = Math.max(longest, run);
                first = first < 0 ? i : first;
                last = i;
            } else {
                run = 0;
            }
        }
        if (longest < 2) {
            return List.of();
        }
        double step = step(values, quiet);
        boolean flat = step < 0.2 * noise(values, quiet, limit)
                ? at >= LEAST
                : longest >= UNFLICKERING && flicker(values, quiet, limit, step) > FLICKER;
        if (!flat) {
            return List.of();
        }
        double share = (double) at / (quiet.fall() - quiet.rise());
        Finding seen = Finding.at(
                FindingCode.SATURATION,
                Sentence.of(
                        "%d samples between %.4g s and %.4g s read exactly %.4g %s, the highest of the record, %.2g %%"
                                + " of the time that the motor worked: the %s was higher there.",
                        at,
                        time[first],
                        time[last],
                        limit / channel.unit(),
                        channel.symbol(),
                        100 * share,
                        channel.name()),
                time[first]);
        return List.of(share > HARMLESS ? seen.withSeverity(Severity.REJECTION) : seen);
    }

    /**
     * Scatter of the samples that are not at the limit; 0 where the converter's steps hide it. Each sample against the mean
     * of its neighbours, as {@link Scatter#fastStd} has it, but with those that stand still: of a coarse converter only
     * the moving ones would show, and a step would pass for noise.
     */
    private static double noise(double[] values, QuietParts quiet, double limit) {
        double working = hidden(values, quiet.rise(), quiet.fall(), limit);
        return quiet.before()
                .map(level -> Math.max(working, hidden(values, level.from(), level.to(), limit)))
                .orElse(working);
    }

    private static double hidden(double[] values, int from, int to, double limit) {
        double[] bend = new double[Math.max(0, to - from)];
        int count = 0;
        for (int i = from + 1; i < to - 1; i++) {
            if (values[i - 1] < limit && values[i] < limit && values[i + 1] < limit) {
                bend[count++] = values[i] - 0.5 * (values[i - 1] + values[i + 1]);
            }
        }
        return count < 5 ? 0 : Scatter.stdAboutZero(bend, 0, count) / Math.sqrt(1.5);
    }

    /**
     * Share of the samples below the limit that lie three half steps or more off the mean of their neighbours, which a converter
     * gives to noise alone: neither a slope that it rounds nor a level at the edge of a step jumps by more than one step.
     */
    private static double flicker(double[] values, QuietParts quiet, double limit, double step) {
        int slow = 0;
        int jumping = 0;
        for (int i = 1; i < quiet.fall() - 1; i++) {
            double before = values[i - 1];
            double after = values[i + 1];
            // On the steep rise of ignition the record itself bends by whole steps.
            if (Math.abs(after - before) < 2.5 * step && Math.max(values[i], Math.max(before, after)) < limit) {
                slow++;
                jumping += Math.abs(values[i] - 0.5 * (before + after)) > 1.25 * step ? 1 : 0;
            }
        }
        return slow < 5 ? 0 : (double) jumping / slow;
    }

    /**
     * Step of the converter: the distance between readings that a tenth of them keep; nearly 0 where hardly any reading repeats.
     * Not the median: rise and tail-off pass most steps by where the plateau is clipped.
     */
    private static double step(double[] values, QuietParts quiet) {
        // Over the whole record: where the whole plateau is clipped, only the quiet parts show single readings.
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] distances = new double[sorted.length];
        int distinct = 0;
        for (int i = 1; i < sorted.length; i++) {
            if (sorted[i] > sorted[i - 1]) {
                distances[distinct++] = sorted[i] - sorted[i - 1];
            }
        }
        Arrays.sort(distances, 0, distinct);
        return distinct == 0 ? quiet.range() : distances[distinct / 10];
    }
}
