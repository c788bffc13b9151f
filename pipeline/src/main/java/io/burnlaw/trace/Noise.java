package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.List;

/** Scatter of the samples about their running mean while the motor works, by the median absolute deviation. */
final class Noise {

    /** Above this share of the highest pressure the scatter is told [1]: common practice, no source. */
    private static final double EXCESS = 0.01;

    private Noise() {}

    static double std(double[] values, QuietParts quiet) {
        int from = quiet.rise();
        int to = quiet.fall();
        if (to - from < 16) {
            return quiet.before()
                    .map(level -> Scatter.std(values, level.from(), level.to()))
                    .orElse(0.0);
        }
        int half = Math.max(2, (to - from) / 200);
        double[] burn = java.util.Arrays.copyOfRange(values, from, to);
        double[] mean = Scatter.runningMean(burn, half);
        double[] off = new double[burn.length - 2 * half];
        for (int i = 0; i < off.length; i++) {
            off[i] = burn[i + half] - mean[i + half];
        }
        // A sample is part of its own running mean.
        return Scatter.stdAboutZero(off, 0, off.length) / Math.sqrt(1 - 1.0 / (2 * half + 1));
    }

    static List<Finding> judge(double std, double[] values, QuietParts quiet, double[] time, String quantity) {
        boolean large = quiet.rise() < time.length
                && std > EXCESS * quiet.range()
                // Pulses scatter about their running mean as well, but not from sample to sample.
                && Scatter.fastStd(values, quiet.rise(), quiet.fall()) > EXCESS / 2 * quiet.range();
        if (!large) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.EXCESS_NOISE,
                Sentence.of(
                        "Single samples of the %s scatter by %.2g %% of its range (standard deviation, from %.4g s on);"
                                + " up to %.0f %% is usual.",
                        quantity, 100 * std / quiet.range(), time[quiet.rise()], 100 * EXCESS),
                time[quiet.rise()]));
    }
}
