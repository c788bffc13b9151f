package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.InputFile;
import io.burnlaw.comparison.Comparison;
import io.burnlaw.comparison.DoseTrend;
import java.util.List;

/**
 * All that a campaign gave.
 *
 * @param campaign     as read
 * @param inputs       files that were read, with checksums, in the order of their paths
 * @param notes        what was guessed or assumed while reading, as sentences
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
}
