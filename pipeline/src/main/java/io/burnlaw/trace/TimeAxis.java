package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * The times of a record made to rise: samples of one time stamp become their mean, and a clock that runs backward ends
 * the record there.
 *
 * @param trace    with rising times
 * @param findings what was mended; a rejection where time ran backward
 */
record TimeAxis(Trace trace, List<Finding> findings) {

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
                    String.format(
                            Locale.ROOT,
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
            return new TimeAxis(trace, findings);
        }
        if (distinct < end) {
            findings.add(Finding.at(
                    FindingCode.REPEATED_TIMESTAMP,
                    String.format(
                            Locale.ROOT,
                            "%d of %d samples repeat the time stamp before them, the first at %.6g s; the mean of each"
                                    + " group was taken.",
                            end - distinct,
                            end,
                            first),
                    first));
        }
        return new TimeAxis(merged(trace, end, distinct), findings);
    }

    private static Trace merged(Trace trace, int end, int distinct) {
        int[] group = new int[end];
        double[] time = new double[distinct];
        for (int i = 0; i < end; i++) {
            group[i] = i == 0 ? 0 : trace.time(i) > trace.time(i - 1) ? group[i - 1] + 1 : group[i - 1];
            time[group[i]] = trace.time(i);
        }
        Function<double[], double[]> means = values -> {
            double[] sum = new double[distinct];
            int[] count = new int[distinct];
            for (int i = 0; i < end; i++) {
                sum[group[i]] += values[i];
                count[group[i]]++;
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
