package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Strand;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.reduction.PressureFromThrust;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** Reads and reduces every record of a campaign, without fitting a law. */
public final class CampaignCheck {

    private CampaignCheck() {}

    /**
     * What reading one row's record gave.
     *
     * @param id       of the firing or strand
     * @param trace    path of its record, or {@code timed} where the burn was only timed
     * @param problem  why the file cannot be read, which one of the findings says too
     * @param findings what was seen of the row and the file
     * @param notes    what was guessed, as sentences
     */
    public record RowCheck(
            String id, String trace, Optional<Problem> problem, List<Finding> findings, List<String> notes) {
        public RowCheck {
            findings = List.copyOf(findings);
            notes = List.copyOf(notes);
        }

        /** {@return whether the log itself says that the row is not to be used} */
        public boolean setAside() {
            return findings.stream().anyMatch(finding -> finding.code() == FindingCode.SET_ASIDE);
        }

        /** {@return whether the row was meant to be used and gives no rate as it is} */
        public boolean rejected() {
            return !setAside() && findings.stream().anyMatch(finding -> finding.severity() == Severity.REJECTION);
        }
    }

    /**
     * Reads the records of all rows.
     *
     * @param campaign as read
     * @param progress told of the records that are read
     * @return one a firing, then one a strand, in the order of the logs
     */
    public static List<RowCheck> of(Campaign campaign, Progress progress) {
        return Workers.run(Runtime.getRuntime().availableProcessors(), () -> {
            List<RowCheck> rows = new ArrayList<>(Workers.map(
                    campaign.firings(),
                    firing -> guarded(firing.id(), () -> firing(campaign, firing)),
                    progress,
                    "firings read"));
            rows.addAll(Workers.map(
                    campaign.strands(),
                    strand -> guarded(strand.id(), () -> strand(campaign, strand)),
                    progress,
                    "strands read"));
            return rows;
        });
    }

    private static RowCheck guarded(String id, Supplier<RowCheck> check) {
        return Guard.around(check, id, fault -> new RowCheck(id, id, Optional.empty(), List.of(fault), List.of()));
    }

    private static RowCheck firing(Campaign campaign, Firing firing) {
        if (firing.setAside().isPresent()) {
            return aside(
                    firing.id(),
                    firing.trace().orElse("timed"),
                    firing.setAside().get());
        }
        List<Finding> findings = new ArrayList<>();
        Optional<Grain> grain = Grains.of(firing.grain()).match(built -> Optional.of(built.grain()), impossible -> {
            findings.add(Finding.of(
                    FindingCode.UNUSABLE_ROW,
                    "the log, line " + firing.row() + ": " + String.join("; ", impossible.reasons())));
            return Optional.empty();
        });
        if (firing.trace().isEmpty()) {
            return new RowCheck(firing.id(), "timed", Optional.empty(), findings, List.of());
        }
        String trace = firing.trace().get();
        TraceReading reading =
                TraceReader.read(campaign.folder(), firing.id(), trace, firing.settings(), firing.ambientPressure());
        reading.<Optional<Finding>>match(
                        read -> read.trace().hasPressure() ? Optional.empty() : PressureFromThrust.exitUnknown(firing),
                        unreadable -> Optional.empty())
                .ifPresent(findings::add);
        return row(
                firing.id(),
                trace,
                findings,
                reading,
                read -> grain.map(built -> FiringWork.reduction(campaign, firing, built, read)
                                .findings())
                        .orElse(List.of()));
    }

    private static RowCheck strand(Campaign campaign, Strand strand) {
        if (strand.setAside().isPresent()) {
            return aside(strand.id(), strand.trace(), strand.setAside().get());
        }
        return row(
                strand.id(),
                strand.trace(),
                new ArrayList<>(),
                TraceReader.read(
                        campaign.folder(), strand.id(), strand.trace(), strand.settings(), strand.ambientPressure()),
                read -> StrandWork.reduction(strand, StrandWork.formulation(campaign, strand), read)
                        .findings());
    }

    /** What is seen in a record that can be read, and why the same reduction as in a run would reject it. */
    private static RowCheck row(
            String id,
            String trace,
            List<Finding> findings,
            TraceReading reading,
            Function<TraceReading.Read, List<Finding>> reduction) {
        return reading.match(
                read -> {
                    findings.addAll(read.findings());
                    reduction.apply(read).stream()
                            .filter(finding -> finding.severity() == Severity.REJECTION)
                            .filter(finding -> !findings.contains(finding))
                            .forEach(findings::add);
                    return new RowCheck(id, trace, Optional.empty(), findings, read.notes());
                },
                unreadable -> {
                    findings.addAll(unreadable.findings());
                    return new RowCheck(id, trace, unreadable.problem(), findings, List.of());
                });
    }

    private static RowCheck aside(String id, String trace, String reason) {
        return new RowCheck(id, trace, Optional.empty(), List.of(Finding.of(FindingCode.SET_ASIDE, reason)), List.of());
    }
}
