package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.ReductionSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Reduces a firing: from its record and its grain to rate-pressure points with their uncertainty, events and findings.
 *
 * <p>Condition the record, find the operation and its events, close the mass balance, take the rates by both
 * definitions and along the burn, add up the uncertainty, and look the burn over. See docs/methods.md, Events and
 * Reduction.
 */
public final class FiringReducer {

    /** A record that ends above this share of the highest pressure has not seen the tail-off [1]. */
    private static final double CUT_OFF = 0.15;

    /** What is kept of the record before the first sign of burning, as a share of the operation [1]. */
    private static final double MARGIN = 0.04;

    private FiringReducer() {}

    /**
     * Reduces a firing.
     *
     * @param firing          row of the log
     * @param formulation     its propellant
     * @param settings        method and thresholds
     * @param hardware        what the case can stand
     * @param grain           the firing's grain
     * @param trace           the firing's record, pressure absolute
     * @param readingFindings what was seen while reading it; comes first among the findings of the result
     * @return the points, or why there are none
     * @throws IllegalArgumentException if trace and firing have different ids
     */
    public static Reduction reduce(
            Firing firing,
            Formulation formulation,
            ReductionSettings settings,
            Hardware hardware,
            Grain grain,
            Trace trace,
            List<Finding> readingFindings) {
        if (!trace.firing().equals(firing.id())) {
            throw new IllegalArgumentException("trace of " + trace.firing() + " with firing " + firing.id());
        }
        List<Finding> findings = new ArrayList<>(readingFindings);
        if (!trace.hasPressure()) {
            findings.add(Finding.of(FindingCode.UNREADABLE_TRACE, "the record has no pressure"));
            return new Reduction.Rejected(firing.id(), findings, Optional.empty());
        }
        QuietPart quiet = QuietPart.of(trace, firing.ambientPressure());
        Trace zeroed = quiet.zeroed(trace, firing.ambientPressure());
        double[] time = zeroed.times();
        double[] gauge = zeroed.pressures();
        for (int i = 0; i < gauge.length; i++) {
            gauge[i] -= firing.ambientPressure();
        }
        Optional<Operation> operation = Operation.find(time, gauge, quiet.noise());
        if (operation.isEmpty()) {
            findings.add(Finding.of(FindingCode.NO_IGNITION, "nothing in the record rises clearly above its noise"));
            return new Reduction.Rejected(
                    firing.id(), findings, HistoryThinning.of(zeroed, time[0], time[time.length - 1]));
        }
        Operation seen = operation.get();
        double span = seen.to() - seen.from();
        Optional<TraceHistory> history = HistoryThinning.of(zeroed, seen.from() - 0.15 * span, seen.to() + 0.25 * span);
        EvenRecord record = EvenRecord.of(time, zeroed.pressures(), seen.from() - MARGIN * span, seen.to());
        Optional<EventFinder.Found> found = EventFinder.find(record, firing.ambientPressure(), quiet.noise(), settings);
        double atEnd = gauge[gauge.length - 1];
        if (found.isEmpty() || !seen.recorded() && atEnd > CUT_OFF * seen.highest()) {
            findings.add(Finding.at(
                    FindingCode.TRUNCATED,
                    String.format(
                            Locale.ROOT,
                            "the record ends at %.4g s with the pressure still at %.0f %% of its highest",
                            time[time.length - 1],
                            100 * atEnd / seen.highest()),
                    time[time.length - 1]));
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        BurnReduction burn = BurnReduction.of(
                new BurnReduction.Firing(firing, formulation, settings, hardware, grain),
                zeroed,
                quiet,
                record,
                found.get());
        findings.addAll(burn.findings());
        return findings.stream().anyMatch(f -> f.severity() == Severity.REJECTION)
                ? new Reduction.Rejected(firing.id(), findings, history)
                : burn.reduced(findings, history);
    }
}
