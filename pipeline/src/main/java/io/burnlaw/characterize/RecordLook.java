package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Grains;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.events.HistoryThinning;
import io.burnlaw.reduction.events.Operation;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import io.burnlaw.trace.reading.TraceReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a record shows without its grain: its noise, its zero and its events.
 *
 * @param asRead    before anything was taken off
 * @param record    brought to zero
 * @param ambient   pressure on the day [Pa, absolute]
 * @param operation the stretch in which something burned, where anything rises above the noise
 * @param events    where an ignition with a burnout after it can be made out
 * @param history   for a picture; its pressures are thrusts [N] where no pressure was recorded
 * @param findings  of the reading and of the conditioning
 */
public record RecordLook(
        Trace asRead,
        ConditionedTrace record,
        double ambient,
        Optional<Operation> operation,
        Optional<EventFinder.Found> events,
        Optional<TraceHistory> history,
        List<Finding> findings) {

    /** What is shown before the operation, as a share of it [1]. */
    private static final double MARGIN = 0.04;

    /** The search for events knows pressures: a thrust is scaled to an ordinary one [Pa]. */
    private static final double STAND_IN = 5e6;

    public RecordLook {
        findings = List.copyOf(findings);
    }

    /**
     * Looks at a record.
     *
     * @param ambient  pressure on the day [Pa, absolute]
     * @param settings how it was read
     */
    public static RecordLook of(TraceReading.Read read, double ambient, TraceSettings settings) {
        ConditionedTrace conditioned = TraceConditioning.condition(read.trace(), ambient, settings);
        List<Finding> findings = new ArrayList<>(read.findings());
        findings.addAll(conditioned.findings());
        double scale = read.trace().hasPressure()
                ? 1
                : STAND_IN / Math.max(1e-9, highest(conditioned.trace().thrusts()));
        ConditionedTrace burn = read.trace().hasPressure() ? conditioned : asPressure(conditioned, ambient, scale);
        Optional<Operation> operation = Operation.find(burn.trace(), ambient, burn);
        Optional<EventFinder.Found> events = operation.flatMap(seen -> {
            double before = seen.from() - MARGIN * (seen.to() - seen.from());
            UniformTrace even =
                    UniformTrace.of(burn.trace().times(), burn.trace().pressures(), before, seen.to());
            double noise = burn.noiseStd() / Math.sqrt(Math.max(1, even.samplesPerCell()));
            return EventFinder.find(even, ambient, noise, ReductionSettings.defaults());
        });
        Trace shown = read.trace().hasPressure()
                ? conditioned.trace()
                : asPressure(conditioned, 0, 1).trace();
        Optional<TraceHistory> history =
                operation.map(seen -> HistoryThinning.of(shown, seen)).orElseGet(() -> HistoryThinning.whole(shown));
        return new RecordLook(read.trace(), conditioned, ambient, operation, events, history, findings);
    }

    /**
     * Reduces a record whose grain is known.
     *
     * @param campaign with the record as its only firing
     * @return what came of it
     */
    public static FiringResult reduced(Campaign campaign, TraceReading.Read read) {
        Firing firing = campaign.firings().get(0);
        Reduction reduction = Grains.of(firing.grain())
                .match(
                        built -> FiringWork.reduction(campaign, firing, built, read),
                        impossible -> new Reduction.Rejected(
                                firing.id(),
                                List.of(Finding.of(FindingCode.UNUSABLE_ROW, String.join("; ", impossible))),
                                Optional.empty()));
        return new FiringResult(
                firing.id(),
                firing.formulation(),
                firing.trace(),
                Optional.empty(),
                Optional.of(read.input()),
                read.notes(),
                reduction);
    }

    private static ConditionedTrace asPressure(ConditionedTrace record, double ambient, double scale) {
        double[] pressures = Arrays.stream(record.trace().thrusts())
                .map(newtons -> ambient + scale * newtons)
                .toArray();
        return new ConditionedTrace(
                record.trace().withPressure(pressures),
                scale * record.noiseStd(),
                scale * record.zeroStd(),
                record.quietUntil(),
                record.findings());
    }

    private static double highest(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }
}
