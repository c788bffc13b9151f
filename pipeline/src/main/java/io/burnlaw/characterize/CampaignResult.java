package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Strand;
import io.burnlaw.comparison.Comparison;
import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.prediction.PredictionCheck;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.strand.StrandReduction;
import java.util.List;
import java.util.Optional;

/**
 * All results of a campaign.
 *
 * @param inputs       files that were read, with checksums, in the order of their paths
 * @param notes        what was guessed or assumed when the files were read, as sentences
 * @param firings      one a row of the firing log, in its order, unusable rows last
 * @param strands      one a row of strands.csv, in its order
 * @param formulations one a formulation, in the order of the campaign
 * @param outlooks     what their laws predict, one a formulation, in the same order
 * @param comparisons  candidates against their baselines
 * @param trends       of additives over their fractions
 */
public record CampaignResult(
        Campaign campaign,
        List<InputFile> inputs,
        List<String> notes,
        List<FiringResult> firings,
        List<StrandResult> strands,
        List<FormulationResult> formulations,
        List<Predictions> outlooks,
        List<Comparison> comparisons,
        List<DoseTrend> trends) {

    public CampaignResult {
        inputs = List.copyOf(inputs);
        notes = List.copyOf(notes);
        firings = List.copyOf(firings);
        strands = List.copyOf(strands);
        formulations = List.copyOf(formulations);
        outlooks = List.copyOf(outlooks);
        comparisons = List.copyOf(comparisons);
        trends = List.copyOf(trends);
    }

    /**
     * What the law of one formulation predicts.
     *
     * @param closure how well it predicted the firings that were made
     * @param plan    the next throat, or why none is named
     * @param basis   of the plan; empty where there is no motor to plan for
     */
    public record Predictions(PredictionCheck closure, Plan plan, Optional<PlanBasis> basis) {}

    /**
     * Result for one strand.
     *
     * @param input        the record with its checksum, where it could be read
     * @param readingNotes what was guessed while reading the record, as sentences
     * @param reduction    its rate point, or why there is none
     */
    public record StrandResult(
            Strand strand, Optional<InputFile> input, List<String> readingNotes, StrandReduction reduction) {

        public StrandResult {
            readingNotes = List.copyOf(readingNotes);
        }

        /** The same strand with another reduction. */
        public StrandResult withReduction(StrandReduction other) {
            return new StrandResult(strand, input, readingNotes, other);
        }
    }

    /**
     * Result for one row of the log.
     *
     * @param formulation  id of its propellant
     * @param trace        path of its record, where the log has one
     * @param input        the record with its checksum, where it could be read
     * @param readingNotes what was guessed while reading the record, as sentences
     * @param reduction    its rate points, or why there are none
     */
    public record FiringResult(
            String id,
            String formulation,
            Optional<String> trace,
            Optional<String> note,
            Optional<InputFile> input,
            List<String> readingNotes,
            Reduction reduction) {

        public FiringResult {
            readingNotes = List.copyOf(readingNotes);
        }

        /** The same firing with another reduction. */
        public FiringResult withReduction(Reduction other) {
            return new FiringResult(id, formulation, trace, note, input, readingNotes, other);
        }
    }
}
