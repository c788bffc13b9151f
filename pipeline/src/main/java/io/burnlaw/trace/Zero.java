package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.trace.QuietParts.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The reading of the sensor when nothing happens, brought to what is known to be there: the ambient pressure, or no
 * thrust.
 *
 * <pre>
 *     offset = median of the quiet part before ignition, less the known value
 *     drift  = median after the end, less the median before
 *     u(zero)^2 = u(offset)^2 + (|drift| / 2)^2 / 3
 * </pre>
 * The drift is taken off as a straight line between the middles of the two quiet parts, or, where the zero comes back
 * after the burn ({@link Relaxation}), as a straight line from the rise to the burnout and that return behind it. Where in the burn it came
 * nobody knows: half of it bounds the error of the line, taken as rectangular (JCGM 100:2008, 4.3.7).
 *
 * @param std     standard uncertainty of the zero during the burn
 */
record Zero(double[] values, double std, List<Finding> finding) {

    /** Below this share of the range an offset or a drift is not worth a word [1]. */
    private static final double WORTH_TELLING = 0.005;

    /** Significance of an offset or drift, in standard uncertainties. */
    private static final double STDS = 5;

    /** A warmed sensor reads less than this share of the range [1]: 1 to 3 % is common, by practice, no source. */
    private static final double LARGEST_WARMTH = 0.1;

    /** Standard uncertainty of a zero that could not be seen, as a share of the range [1]: common practice, no source. */
    private static final double UNSEEN = 0.01;

    /** Standard uncertainty of a drift that could not be seen, as a share of the range [1]: common practice, no source. */
    private static final double UNSEEN_DRIFT = 0.002;

    static Zero correct(double[] time, double[] values, QuietParts quiet, Channel channel) {
        Optional<Level> anchor = quiet.before().or(quiet::after);
        if (anchor.isEmpty()) {
            return new Zero(values, UNSEEN * quiet.range(), List.of(unseen(time, channel, quiet)));
        }
        List<Finding> findings = new ArrayList<>();
        // What falls by more than a warmed sensor ever reads is the burn itself, behind an igniter's peak for one.
        Optional<Relaxation> relaxing = Relaxation.find(time, values, quiet)
                .filter(found -> quiet.before().isEmpty()
                        || Math.abs(found.zero(found.burnout())
                                        - quiet.before().get().value())
                                < LARGEST_WARMTH * quiet.range());
        double offset = anchor.get().value() - channel.known();
        double variance = square(anchor.get().std());
        double[] corrected = new double[values.length];
        for (int i = 0; i < corrected.length; i++) {
            corrected[i] = values[i] - offset;
        }
        if (quiet.before().isEmpty()) {
            findings.add(onlyAfter(time, channel, anchor.get()));
            variance += square(UNSEEN_DRIFT * quiet.range());
        } else if (relaxing.isPresent()) {
            Relaxation back = relaxing.get();
            Level before = quiet.before().get();
            double warmed = back.zero(back.burnout()) - before.value();
            double lit = time[quiet.rise()];
            for (int i = 0; i < corrected.length; i++) {
                double share = (time[i] - lit) / (back.burnout() - lit);
                double zero = time[i] >= back.burnout()
                        ? back.zero(time[i]) - channel.known()
                        : offset + warmed * Math.max(0, share);
                corrected[i] = values[i] - zero;
            }
            variance += square(warmed / 2) / 3 + square(back.std());
            if (Math.abs(warmed) > WORTH_TELLING * quiet.range()) {
                findings.add(warmed(channel, back, warmed, quiet.range()));
            }
        } else if (quiet.after().isEmpty()) {
            variance += square(UNSEEN_DRIFT * quiet.range());
        } else {
            Level before = quiet.before().get();
            Level after = quiet.after().get();
            double drift = after.value() - before.value();
            variance += square(drift / 2) / 3;
            if (Math.abs(drift) > STDS * Math.hypot(before.std(), after.std())) {
                for (int i = 0; i < corrected.length; i++) {
                    double share = (time[i] - before.time()) / (after.time() - before.time());
                    corrected[i] = values[i] - (offset + drift * Math.max(0, Math.min(1, share)));
                }
                if (Math.abs(drift) > WORTH_TELLING * quiet.range()) {
                    findings.add(drift(channel, before, after, quiet.range()));
                }
            }
        }
        if (quiet.rise() < time.length
                && Math.abs(offset) > Math.max(STDS * anchor.get().std(), WORTH_TELLING * quiet.range())) {
            findings.add(offset(channel, offset, anchor.get(), time, quiet.range()));
        }
        return new Zero(corrected, Math.sqrt(variance), findings);
    }

    private static Finding offset(Channel channel, double offset, Level where, double[] time, double range) {
        String kind = "";
        double known = channel.known();
        if (known > 0 && Math.abs(offset - known) < Math.max(0.03 * known, 3 * where.std())) {
            kind = " That is about the ambient pressure: the record is probably absolute, not gauge.";
        } else if (known > 0 && Math.abs(offset + known) < Math.max(0.03 * known, 3 * where.std())) {
            kind = " The ambient pressure is missing: the record is probably gauge, not absolute.";
        }
        return Finding.at(
                FindingCode.ZERO_OFFSET,
                Sentence.of(
                        "The quiet part from %.4g s to %.4g s reads %+.3g %s instead of zero (%.2g %% of the range);"
                                + " this was subtracted from the whole record.%s",
                        time[where.from()],
                        time[where.to() - 1],
                        offset / channel.unit(),
                        channel.symbol(),
                        100 * Math.abs(offset) / range,
                        kind),
                time[where.from()]);
    }

    private static Finding drift(Channel channel, Level before, Level after, double range) {
        double drift = after.value() - before.value();
        return Finding.at(
                FindingCode.BASELINE_DRIFT,
                Sentence.of(
                        "The zero of the %s moved by %+.3g %s between %.4g s and %.4g s (%.2g %% of the range); a"
                                + " straight line was subtracted, and the zero is uncertain by up to half of the change.",
                        channel.name(),
                        drift / channel.unit(),
                        channel.symbol(),
                        before.time(),
                        after.time(),
                        100 * Math.abs(drift) / range),
                after.time());
    }

    private static Finding warmed(Channel channel, Relaxation back, double warmed, double range) {
        return Finding.at(
                FindingCode.BASELINE_DRIFT,
                Sentence.of(
                        "After the burn the %s read %+.3g %s (%.2g %% of the range) and came back with a time constant"
                                + " of %.2g s, as a warmed sensor does. The zero was assumed to move there evenly during the burn,"
                                + " and is uncertain by up to half of the change.",
                        channel.name(),
                        warmed / channel.unit(),
                        channel.symbol(),
                        100 * Math.abs(warmed) / range,
                        back.tau()),
                back.burnout());
    }

    private static Finding onlyAfter(double[] time, Channel channel, Level after) {
        return Finding.at(
                FindingCode.NO_QUIET_PART,
                Sentence.of(
                        "The record of the %s begins at %.4g s without a quiet part before the rise: its zero was taken"
                                + " from the quiet part after %.4g s, and a drift could not be seen.",
                        channel.name(), time[0], time[after.from()]),
                time[0]);
    }

    private static Finding unseen(double[] time, Channel channel, QuietParts quiet) {
        return Finding.at(
                FindingCode.NO_QUIET_PART,
                Sentence.of(
                        "The record of the %s has no quiet part, neither before %.4g s nor after the burn: its zero was"
                                + " assumed to be right, with a standard uncertainty of %.2g %s.",
                        channel.name(),
                        time.length == 0 ? 0 : time[Math.min(quiet.rise(), time.length - 1)],
                        UNSEEN * quiet.range() / channel.unit(),
                        channel.symbol()),
                time.length == 0 ? 0 : time[0]);
    }

    private static double square(double x) {
        return x * x;
    }
}
