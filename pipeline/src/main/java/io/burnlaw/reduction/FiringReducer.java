package io.burnlaw.reduction;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.events.HistoryThinning;
import io.burnlaw.reduction.events.Operation;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.screening.BurnScreening;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reduces a firing: from its record and its grain to rate-pressure points with their uncertainty, events and findings.
 *
 * <p>Condition the record, screen it, find its events, close the mass balance, take the rates by both definitions and
 * along the burn, add up the uncertainty, and review the result. See docs/methods.md, Events and Reduction.
 */
public final class FiringReducer {

    /** What is kept of the record before the first sign of burning, as a share of the operation [1]. */
    private static final double MARGIN = 0.04;

    /**
     * A cell of the grid has no more noise than this share of the highest pressure [1]: the root of a quarter of that
     * pressure is then off by less than a thousandth.
     */
    private static final double CELL_NOISE = 0.02;

    private FiringReducer() {}

    /**
     * Reduces a firing.
     *
     * @param hardware        what the case can stand
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
        ConditionedTrace conditioned = TraceConditioning.condition(trace, firing.ambientPressure(), firing.settings());
        findings.addAll(conditioned.findings());
        Optional<PressureFromThrust> derived = trace.hasPressure()
                ? Optional.empty()
                : Optional.of(PressureFromThrust.derive(conditioned, firing, formulation));
        derived.ifPresent(d -> findings.addAll(d.findings()));
        Burn burn = new Burn(
                firing,
                formulation,
                hardware,
                grain,
                derived.map(PressureFromThrust::record).orElse(conditioned));
        findings.addAll(BurnScreening.screen(burn));
        Trace record = burn.record().trace();
        Optional<Operation> operation = Operation.find(record, firing.ambientPressure(), burn.record());
        Optional<TraceHistory> history =
                operation.map(seen -> HistoryThinning.of(record, seen)).orElseGet(() -> HistoryThinning.whole(record));
        if (rejected(findings)) {
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        if (operation.isEmpty()) {
            findings.add(nothingRises(record));
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        UniformTrace even = even(burn.record(), operation.get());
        double noise = burn.record().noiseStd() / Math.sqrt(Math.max(1, even.samplesPerCell()));
        Optional<EventFinder.Found> found = EventFinder.find(even, firing.ambientPressure(), noise, settings);
        if (found.isEmpty()) {
            findings.add(withoutEvents(operation.get()));
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        MassBalance balance = MassBalance.of(BurnInputs.of(burn, even));
        BurnedBefore.nearlyAll(balance, found.get()).ifPresent(findings::add);
        if (rejected(findings)) {
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        BurnReduction reduction;
        try {
            reduction = BurnReduction.of(burn, settings, balance, found.get(), derived.map(PressureFromThrust::scale));
        } catch (PressureDistribution.NoTime together) {
            findings.add(Finding.of(
                            FindingCode.IMPLAUSIBLE_BURN_TIME,
                            "With these dimensions no time passes between ignition and burnout: check chamber volume, throat,"
                                    + " grain, and the unit of time.")
                    .withSeverity(Severity.REJECTION));
            return new Reduction.Rejected(firing.id(), findings, history);
        }
        findings.addAll(BurnReview.of(reduction));
        return rejected(findings)
                ? new Reduction.Rejected(firing.id(), findings, history)
                : reduction.reduced(findings, history);
    }

    /**
     * The operation on an even grid, as coarse as a very noisy record asks: where the flow is not choked it goes with the
     * root of the pressure over ambient, and a root of noise is not nothing on average.
     */
    private static UniformTrace even(ConditionedTrace record, Operation seen) {
        double before = seen.from() - MARGIN * (seen.to() - seen.from());
        double together = record.noiseStd() / (CELL_NOISE * seen.highest());
        return UniformTrace.of(
                record.trace().times(), record.trace().pressures(), before, seen.to(), together * together);
    }

    private static boolean rejected(List<Finding> findings) {
        return findings.stream().anyMatch(finding -> finding.severity() == Severity.REJECTION);
    }

    private static Finding withoutEvents(Operation seen) {
        return Finding.at(
                FindingCode.TRUNCATED,
                Sentence.of(
                        "Between %.4g s and %.4g s, no ignition with a burnout after it was found.",
                        seen.from(), seen.to()),
                seen.to());
    }

    private static Finding nothingRises(Trace record) {
        return Finding.of(
                FindingCode.NO_IGNITION,
                "Nothing in the " + record.size() + " samples of the record rises clearly above its noise.");
    }
}
