package io.burnlaw.reduction.strand;

import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Strand;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.HistoryThinning;
import io.burnlaw.reduction.point.BudgetLine;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reduces a strand burned in a vessel to a rate-pressure point.
 *
 * <pre>
 *     r      = L / (tE - tB)                                                       [m/s]
 *     P      = integral of p dt from tB to tE, over (tE - tB)                      [Pa]
 *     u(r)/r = sqrt( (u(L)/L)^2 + (u(tE - tB) / (tE - tB))^2 )                     [1]
 * </pre>
 * tB and tE are the first and the last break wire, or where there are none the begin and end of the pressure rise. The
 * zero of a strand record is not corrected: it begins at the pressure that the vessel was filled to.
 *
 * <p><b>Source.</b> Thickness over time: Fry, CPTR 75 (2002); propagation: JCGM 100:2008, equation 10. See
 * docs/methods.md, Strands.
 */
public final class StrandReducer {

    /** Of a length by calipers where none is stated [m]: common practice, no source. */
    private static final double USUAL_LENGTH_STD = 0.05e-3;

    /** Of a pressure sensor where none is stated, relative [1]: common practice, no source. */
    private static final double USUAL_PRESSURE_STD = 0.005;

    private static final int DISTRIBUTION_BINS = 200;

    private StrandReducer() {}

    /**
     * Reduces one strand.
     *
     * @param trace           its record, with pressure [Pa, absolute]
     * @param readingFindings what was seen of the file
     * @return the point or the reasons why there is none; never fails on data
     */
    public static StrandReduction reduce(
            Strand strand, Formulation formulation, Trace trace, List<Finding> readingFindings) {
        List<Finding> findings = new ArrayList<>(readingFindings);
        if (!trace.hasPressure()) {
            findings.add(Finding.of(
                    FindingCode.UNREADABLE_TRACE,
                    "The record of strand " + strand.id() + " has no pressure, and a strand has no thrust to use."));
            return new StrandReduction.Rejected(strand.id(), findings, Optional.empty());
        }
        ConditionedTrace record = TraceConditioning.conditionVessel(trace);
        findings.addAll(record.findings());
        Optional<TraceHistory> history = HistoryThinning.whole(record.trace());
        StrandTiming.Search search = strand.wireTimes().size() >= 2
                ? wires(strand, record.trace())
                : StrandTiming.find(record.trace().times(), record.trace().pressures(), record.noiseStd());
        if (search.timing().isEmpty()) {
            findings.add(Finding.of(FindingCode.NO_IGNITION, search.reason()));
        }
        Optional<PressureDistribution> pressures =
                search.timing().flatMap(timing -> distribution(record.trace(), timing));
        if (search.timing().isPresent() && pressures.isEmpty()) {
            findings.add(Finding.of(
                    FindingCode.NO_IGNITION,
                    Sentence.of(
                            "While the strand burned, from %.4g s to %.4g s, the record has no pressure above zero: the"
                                    + " sensor was dead, or the record is of something else.",
                            search.timing().get().begin(), search.timing().get().end())));
        }
        strand.setAside().ifPresent(reason -> findings.add(Finding.of(FindingCode.SET_ASIDE, reason)));
        boolean rejected = findings.stream().anyMatch(finding -> finding.severity() == Severity.REJECTION);
        if (rejected || pressures.isEmpty()) {
            return new StrandReduction.Rejected(strand.id(), findings, history);
        }
        return reduced(strand, pressures.get(), search.timing().get(), findings, history);
    }

    private static StrandReduction reduced(
            Strand strand,
            PressureDistribution pressures,
            StrandTiming timing,
            List<Finding> findings,
            Optional<TraceHistory> history) {
        double duration = timing.end() - timing.begin();
        double length = strand.length().value();
        double lengthStd = strand.length().stdOr(USUAL_LENGTH_STD);
        double rate = length / duration;
        double fromLength = lengthStd / length;
        double fromTime = timing.std() / duration;
        double relative = Math.hypot(fromLength, fromTime);
        double mean = pressures.powerMean(1);
        double pressureStd = strand.settings().pressureUncertainty().orElse(USUAL_PRESSURE_STD * mean);
        RatePoint point = new RatePoint(
                strand.id(),
                strand.id(),
                Optional.empty(),
                strand.formulation(),
                RatePoint.Source.STRAND,
                pressures,
                pressureStd,
                rate,
                relative * rate,
                0,
                strand.temperature(),
                strand.wireTimes().size() >= 2 ? "strand-wires" : "strand-pressure-rise",
                false,
                Optional.empty(),
                List.of(
                        new BudgetLine("length", lengthStd, "m", fromLength, share(fromLength, relative)),
                        new BudgetLine("burn time", timing.std(), "s", fromTime, share(fromTime, relative))),
                new PressureError(0, pressureStd / mean, 0));
        return new StrandReduction.Reduced(
                strand.id(), point, timing.begin(), timing.end(), timing.std(), mean, findings, history);
    }

    private static double share(double part, double whole) {
        return whole > 0 ? part * part / (whole * whole) : 0;
    }

    private static StrandTiming.Search wires(Strand strand, Trace trace) {
        double first = strand.wireTimes().stream()
                .mapToDouble(Double::doubleValue)
                .min()
                .orElseThrow();
        double last = strand.wireTimes().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        int n = trace.size();
        if (n < 2 || first < trace.time(0) || last > trace.time(n - 1) || !(last > first)) {
            return new StrandTiming.Search(
                    Optional.empty(),
                    Sentence.of(
                            "The break wires went at %.4g s and %.4g s, but the record runs from %.4g s to %.4g s: both must"
                                    + " lie within the record, on its own time axis.",
                            first, last, n == 0 ? 0 : trace.time(0), n == 0 ? 0 : trace.time(n - 1)));
        }
        double step = (trace.time(n - 1) - trace.time(0)) / (n - 1);
        // Each wire is timed to within a sample: two rectangular errors of half a step.
        return new StrandTiming.Search(Optional.of(new StrandTiming(first, last, step / Math.sqrt(6), 0)), "");
    }

    private static Optional<PressureDistribution> distribution(Trace trace, StrandTiming timing) {
        double[] sum = new double[DISTRIBUTION_BINS];
        double[] duration = new double[DISTRIBUTION_BINS];
        double span = timing.end() - timing.begin();
        for (int i = 1; i < trace.size(); i++) {
            double left = Math.max(timing.begin(), trace.time(i - 1));
            double right = Math.min(timing.end(), trace.time(i));
            if (right > left) {
                double place = ((left + right) / 2 - timing.begin()) / span;
                int bin = Math.min(DISTRIBUTION_BINS - 1, (int) (place * DISTRIBUTION_BINS));
                sum[bin] += 0.5 * (trace.pressure(i - 1) + trace.pressure(i)) * (right - left);
                duration[bin] += right - left;
            }
        }
        int used = 0;
        for (int bin = 0; bin < DISTRIBUTION_BINS; bin++) {
            if (duration[bin] > 0 && sum[bin] > 0) {
                sum[used] = sum[bin] / duration[bin];
                duration[used] = duration[bin];
                used++;
            }
        }
        return used == 0
                ? Optional.empty()
                : Optional.of(PressureDistribution.of(
                        java.util.Arrays.copyOf(sum, used), java.util.Arrays.copyOf(duration, used)));
    }
}
