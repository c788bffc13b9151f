package io.burnlaw.trace;

import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Turns a record as it came off the stand into one that can be integrated: reports faults, replaces spikes, subtracts
 * hum, zero and drift. Nothing is smoothed, so integrals lose nothing.
 *
 * <p>Derivation, thresholds and their reasons: docs/methods.md, Trace conditioning.
 */
public final class TraceConditioning {

    private TraceConditioning() {}

    /**
     * Conditions one record: pressure and thrust, each on its own.
     *
     * @param trace           as read; pressure [Pa, absolute], thrust [N], times rising
     * @param ambientPressure what the pressure must read when nothing happens [Pa, absolute]
     * @param settings        what is known of the sensor
     * @return the record brought to zero, its uncertainties, and what was seen; never fails on data
     */
    public static ConditionedTrace condition(Trace trace, double ambientPressure, TraceSettings settings) {
        TimeAxis axis = TimeAxis.mend(trace);
        Trace rising = axis.trace();
        double[] time = rising.timeArray();
        List<Finding> findings = new ArrayList<>(axis.findings());
        Optional<Conditioned> thrust =
                rising.hasThrust() ? Optional.of(channel(axis, rising.thrusts(), Channel.thrust())) : Optional.empty();
        Optional<Conditioned> pressure = rising.hasPressure()
                ? Optional.of(channel(axis, rising.pressures(), Channel.pressure(ambientPressure)))
                : Optional.empty();
        pressure.ifPresent(seen -> findings.addAll(seen.findings()));
        thrust.ifPresent(seen -> findings.addAll(seen.findings()));
        Conditioned leading = pressure.or(() -> thrust).orElseThrow();
        Trace conditioned =
                Trace.owning(trace.firing(), time, pressure.map(Conditioned::values), thrust.map(Conditioned::values));
        return new ConditionedTrace(conditioned, leading.noiseStd(), leading.zeroStd(), leading.quietUntil(), findings);
    }

    /**
     * Conditions the record of a pressure vessel, as a strand is burnt in: its zero is believed, since nobody knows what
     * the vessel was filled to but the sensor.
     *
     * @param trace as read, with pressure [Pa, absolute]
     * @return spikes replaced, the noise, and what was seen; never fails on data
     */
    public static ConditionedTrace conditionVessel(Trace trace) {
        TimeAxis axis = TimeAxis.mend(trace);
        double[] time = axis.trace().timeArray();
        Spikes.Despiked despiked = Spikes.remove(time, axis.trace().pressures(), Channel.pressure(0));
        List<Finding> findings = new ArrayList<>(axis.findings());
        findings.addAll(Spacing.judge(time));
        findings.addAll(despiked.finding());
        double noise = Scatter.fastStd(despiked.values(), 0, time.length);
        return new ConditionedTrace(
                axis.trace().withPressure(despiked.values()), noise, 0, time.length == 0 ? 0 : time[0], findings);
    }

    private record Conditioned(
            double[] values, double noiseStd, double zeroStd, double quietUntil, List<Finding> findings) {}

    private static Conditioned channel(TimeAxis axis, double[] values, Channel channel) {
        double[] time = axis.trace().timeArray();
        List<Finding> findings = new ArrayList<>();
        QuietParts coarse = QuietParts.find(time, values);
        findings.addAll(Saturation.judge(time, values, coarse, channel));
        Spikes.Despiked despiked = Spikes.remove(time, values, channel);
        findings.addAll(despiked.finding());
        Hum steady = Hum.remove(time, despiked.values(), coarse.range(), channel);
        findings.addAll(steady.finding());
        // Most records are as they came, and need no second look.
        QuietParts quiet = steady.values() == values ? coarse : QuietParts.find(time, steady.values());
        double noise = Noise.std(steady.values(), quiet);
        findings.addAll(Noise.judge(noise, steady.values(), quiet, time, channel.name()));
        Zero zero = Zero.correct(time, steady.values(), quiet, channel);
        findings.addAll(zero.finding());
        findings.addAll(Sampling.judge(time, axis.samples(), zero.values(), quiet, channel));
        double quietUntil = quiet.before().map(level -> time[level.to() - 1]).orElse(time.length == 0 ? 0 : time[0]);
        return new Conditioned(zero.values(), noise, zero.std(), quietUntil, findings);
    }

    /** Scatter of the samples about their running mean while the motor works, by the median absolute deviation. */
    private static final class Noise {

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

    /**
     * The times of a record made to rise: samples of one time stamp become their mean, and a clock that runs backward
     * ends the record there.
     *
     * @param trace    with rising times
     * @param samples  how many each of its samples stands for
     * @param findings what was mended; a rejection where time ran backward
     */
    private record TimeAxis(Trace trace, int[] samples, List<Finding> findings) {

        static TimeAxis mend(Trace trace) {
            int n = trace.size();
            int backward = 1;
            while (backward < n && trace.time(backward) >= trace.time(backward - 1)) {
                backward++;
            }
            List<Finding> findings = new ArrayList<>();
            if (backward < n) {
                findings.add(Finding.at(
                        FindingCode.BACKWARD_TIME,
                        Sentence.of(
                                "After %.6g s the next sample is stamped %.6g s: %.3g s earlier. The record after it was not"
                                        + " used.",
                                trace.time(backward - 1),
                                trace.time(backward),
                                trace.time(backward - 1) - trace.time(backward)),
                        trace.time(backward - 1)));
            }
            int end = Math.min(backward, n);
            int distinct = 0;
            double first = 0;
            for (int i = 0; i < end; i++) {
                if (i == 0 || trace.time(i) > trace.time(i - 1)) {
                    distinct++;
                } else if (distinct == i) {
                    first = trace.time(i);
                }
            }
            if (distinct == n) {
                int[] single = new int[n];
                Arrays.fill(single, 1);
                return new TimeAxis(trace, single, findings);
            }
            if (distinct < end) {
                findings.add(Finding.at(
                        FindingCode.REPEATED_TIMESTAMP,
                        Sentence.of(
                                "%d of %d samples repeat the time stamp before them, the first at %.6g s; the mean of each"
                                        + " group was taken.",
                                end - distinct, end, first),
                        first));
            }
            int[] group = new int[end];
            int[] count = new int[distinct];
            for (int i = 0; i < end; i++) {
                group[i] = i == 0 ? 0 : trace.time(i) > trace.time(i - 1) ? group[i - 1] + 1 : group[i - 1];
                count[group[i]]++;
            }
            return new TimeAxis(merged(trace, group, count), count, findings);
        }

        private static Trace merged(Trace trace, int[] group, int[] count) {
            double[] time = new double[count.length];
            for (int i = 0; i < group.length; i++) {
                time[group[i]] = trace.time(i);
            }
            Function<double[], double[]> means = values -> {
                double[] sum = new double[count.length];
                for (int i = 0; i < group.length; i++) {
                    sum[group[i]] += values[i];
                }
                Arrays.setAll(sum, k -> sum[k] / count[k]);
                return sum;
            };
            return Trace.of(
                    trace.firing(),
                    time,
                    trace.hasPressure() ? Optional.of(means.apply(trace.pressures())) : Optional.empty(),
                    trace.hasThrust() ? Optional.of(means.apply(trace.thrusts())) : Optional.empty());
        }
    }
}
