package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import java.util.ArrayList;
import java.util.List;

/** How evenly and how densely a record was sampled. */
final class Sampling {

    /** An interval that differs from the usual one by more than this share of it is not even [1]. */
    private static final double UNEVEN = 0.1;

    /** As many uneven intervals make the sampling uneven, not single samples lost [1]. */
    private static final double UNEVEN_SHARE = 0.05;

    private static final double GAP_IN_EVEN = 1.5;
    private static final double GAP_IN_UNEVEN = 5;

    /**
     * Fewer samples than this while the motor works, and the rounding of two events to a sample alone costs the burn
     * time 0.41 % ({@code sqrt(2/12)} of a hundredth).
     */
    private static final int LEAST_SAMPLES = 100;

    /** A gap as long as this share of the operation, across this share of the range, hides an event [1]. */
    private static final double HIDING_TIME = 0.02;

    private static final double HIDING_CHANGE = 0.4;

    /** So many neighbours on each side show whether a long interval is one of many. */
    private static final int SLOWER_REACH = 5;

    private static final double SLOWER_NEAR = 0.25;

    private Sampling() {}

    static List<Finding> judge(double[] time, int[] samples, double[] values, QuietParts quiet, Channel channel) {
        List<Finding> findings = new ArrayList<>();
        if (time.length < 16) {
            return findings;
        }
        double[] intervals = new double[time.length - 1];
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (int i = 0; i < intervals.length; i++) {
            intervals[i] = time[i + 1] - time[i];
            least = Math.min(least, intervals[i]);
            greatest = Math.max(greatest, intervals[i]);
        }
        int working = quiet.fall() - quiet.rise();
        if (greatest - least < UNEVEN * least && working >= LEAST_SAMPLES) {
            return findings;
        }
        double usual = Scatter.median(intervals, 0, intervals.length);
        forgiveSharedStamps(intervals, samples, usual);
        int off = 0;
        double shortest = usual;
        for (double interval : intervals) {
            off += Math.abs(interval - usual) > UNEVEN * usual ? 1 : 0;
            shortest = Math.min(shortest, interval);
        }
        boolean uneven = off > UNEVEN_SHARE * intervals.length;
        gaps(time, values, intervals, (uneven ? GAP_IN_UNEVEN : GAP_IN_EVEN) * usual, quiet, channel)
                .ifPresent(findings::add);
        if (uneven) {
            findings.add(Finding.at(
                    FindingCode.UNEVEN_SAMPLING,
                    Sentence.of(
                            "%.0f %% of the intervals differ by more than %.0f %% from the usual %.4g ms, from %.4g s on;"
                                    + " the shortest is %.3g ms.",
                            100.0 * off / intervals.length, 100 * UNEVEN, 1e3 * usual, time[0], 1e3 * shortest),
                    time[0]));
        }
        if (quiet.rise() < time.length && working < LEAST_SAMPLES) {
            findings.add(Finding.at(
                    FindingCode.COARSE_SAMPLING,
                    Sentence.of(
                            "Only %d samples, one each %.3g ms, lie between the rise at %.4g s and the end; events"
                                    + " rounded to a sample make the burn time uncertain by %.1f %%. Sample %d times"
                                    + " faster.",
                            working,
                            1e3 * usual,
                            time[quiet.rise()],
                            100 * Math.sqrt(2.0 / 12) / Math.max(1, working),
                            (int) Math.ceil(2.0 * LEAST_SAMPLES / Math.max(1, working))),
                    time[quiet.rise()]));
        }
        return findings;
    }

    /** Samples that share a stamp leave stamps after them empty: nothing was lost there. */
    private static void forgiveSharedStamps(double[] intervals, int[] samples, double usual) {
        long shared = 0;
        for (int i = 0; i < intervals.length; i++) {
            shared += samples[i] - 1;
            long missing = Math.round(intervals[i] / usual) - 1;
            if (shared > 0 && missing > 0) {
                long forgiven = Math.min(shared, missing);
                intervals[i] -= forgiven * usual;
                shared -= forgiven;
            }
        }
    }

    /** An interval among others as long: the logger was set to a slower rate there, and lost nothing. */
    private static boolean slowerRate(double[] intervals, int at) {
        int alike = 0;
        for (int i = Math.max(0, at - SLOWER_REACH); i <= Math.min(intervals.length - 1, at + SLOWER_REACH); i++) {
            alike += Math.abs(intervals[i] / intervals[at] - 1) < SLOWER_NEAR ? 1 : 0;
        }
        // itself among them
        return alike > SLOWER_REACH;
    }

    private static java.util.Optional<Finding> gaps(
            double[] time, double[] values, double[] intervals, double gap, QuietParts quiet, Channel channel) {
        int count = 0;
        int longest = -1;
        int hiding = -1;
        double duration = quiet.rise() < time.length ? time[quiet.fall() - 1] - time[quiet.rise()] : 0;
        for (int i = 0; i < intervals.length; i++) {
            if (intervals[i] > gap && !slowerRate(intervals, i)) {
                count++;
                longest = longest < 0 || intervals[i] > intervals[longest] ? i : longest;
                boolean hides = duration > 0
                        && intervals[i] > HIDING_TIME * duration
                        && Math.abs(values[i + 1] - values[i]) > HIDING_CHANGE * quiet.range();
                hiding = hides ? i : hiding;
            }
        }
        if (count == 0) {
            return java.util.Optional.empty();
        }
        int worst = hiding >= 0 ? hiding : longest;
        Finding seen = Finding.at(
                FindingCode.DROPPED_SAMPLES,
                Sentence.of(
                        "%d gap%s in the record; %s one lasts %.3g ms, at %.5g s%s.",
                        count,
                        count == 1 ? "" : "s",
                        hiding >= 0 ? "the worst" : "the longest",
                        1e3 * intervals[worst],
                        time[worst],
                        hiding >= 0
                                ? Sentence.of(
                                        ", and hides a change of the %s by %.3g %s: an event lies in it",
                                        channel.name(),
                                        Math.abs(values[hiding + 1] - values[hiding]) / channel.unit(),
                                        channel.symbol())
                                : ""),
                time[worst]);
        return java.util.Optional.of(hiding >= 0 ? seen.withSeverity(Severity.REJECTION) : seen);
    }
}
