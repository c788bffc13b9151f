package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The times of a record made to rise: samples of one time stamp become their mean, and a clock that runs backward ends
 * the record there.
 *
 * @param trace    with rising times
 * @param samples  how many each of its samples stands for
 * @param findings what was mended; a rejection where time ran backward
 */
record TimeAxis(Trace trace, int[] samples, List<Finding> findings) {

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
