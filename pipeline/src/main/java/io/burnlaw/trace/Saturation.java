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

    /** Noise of 0.4 steps leaves a step with chance 0.21 a sample: a run of 40 by chance has odds of one in 12,000. */
    private static final double FLICKER = 0.4;

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
        double noise = noise(values, quiet, limit);
        double step = step(values, quiet);
        // A reading that moves by steps from sample to sample scatters by their rounding as well, step²/12.
        noise = Math.sqrt(Math.max(0, noise * noise - step * step / 12));
        boolean flat =
                step < 0.2 * noise ? at >= LEAST && longest >= 2 : noise > FLICKER * step && longest >= UNFLICKERING;
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

    /** Step of the converter: the least distance between readings; nearly 0 where hardly any reading repeats. */
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
        return distinct == 0 ? quiet.range() : Scatter.median(distances, 0, distinct);
    }
}
