package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Strand;
import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.strand.StrandReducer;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** One strand from its row to its result. */
final class StrandWork {

    private StrandWork() {}

    /**
     * Reads and reduces one strand. Whatever is wrong with it becomes a rejection of this strand alone.
     *
     * @param store where the course of its pressure is kept
     */
    static StrandResult of(Campaign campaign, Strand strand, NumberStore store) {
        if (strand.setAside().isPresent()) {
            return rejected(
                    strand,
                    List.of(Finding.of(
                            FindingCode.SET_ASIDE,
                            "strands.csv, line " + strand.row() + ", excludes it: "
                                    + strand.setAside().get())));
        }
        Formulation formulation = formulation(campaign, strand);
        return Guard.around(
                () -> guarded(campaign, strand, formulation, store),
                "strand " + strand.id(),
                fault -> rejected(strand, List.of(fault)));
    }

    /** The reduction of a record that could be read. */
    static StrandReduction reduction(Strand strand, Formulation formulation, TraceReading.Read read) {
        Optional<Finding> unreadable = Believable.readings(read.trace());
        if (unreadable.isPresent()) {
            return new StrandReduction.Rejected(
                    strand.id(),
                    Stream.concat(read.findings().stream(), unreadable.stream()).toList(),
                    Optional.empty());
        }
        return Guard.around(
                () -> Believable.only(StrandReducer.reduce(strand, formulation, read.trace(), read.findings())),
                "strand " + strand.id(),
                fault -> new StrandReduction.Rejected(
                        strand.id(),
                        Stream.concat(read.findings().stream(), Stream.of(fault))
                                .toList(),
                        Optional.empty()));
    }

    private static StrandResult guarded(Campaign campaign, Strand strand, Formulation formulation, NumberStore store) {
        return TraceReader.read(
                        campaign.folder(), strand.id(), strand.trace(), strand.settings(), strand.ambientPressure())
                .match(
                        read -> new StrandResult(
                                strand,
                                Optional.of(read.input()),
                                read.notes(),
                                reduction(strand, formulation, read).keptIn(store)),
                        unreadable -> rejected(strand, unreadable.findings()));
    }

    static Formulation formulation(Campaign campaign, Strand strand) {
        return campaign.formulations().stream()
                .filter(candidate -> candidate.id().equals(strand.formulation()))
                .findFirst()
                .orElseThrow();
    }

    private static StrandResult rejected(Strand strand, List<Finding> findings) {
        return new StrandResult(
                strand,
                Optional.empty(),
                List.of(),
                new StrandReduction.Rejected(strand.id(), findings, Optional.empty()));
    }
}
