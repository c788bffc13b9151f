package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.comparison.Comparison;
import io.burnlaw.comparison.ComparisonOptions;
import io.burnlaw.comparison.Comparisons;
import io.burnlaw.comparison.DoseTrends;
import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.comparison.Propellant;
import io.burnlaw.finding.Outcome;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.report.document.Characterization;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Compares formulations of several campaigns, from their published documents alone. */
public final class AcrossCampaigns {

    private AcrossCampaigns() {}

    /**
     * They were compared.
     *
     * @param document that holds the formulations, their firings and the comparisons, to be drawn like any other
     * @param caveats  what else differs between the campaigns, as sentences; they stand among the document's notes too
     */
    public record Compared(Characterization document, List<String> caveats) {}

    /**
     * Compares.
     *
     * @param sources at least one; the baseline stands in the first
     * @param level   of the intervals [1]; that of the first document where empty
     * @param created when, ISO 8601 with zone; empty in reproducible documents
     * @return the comparison, or why there is none
     */
    public static Outcome<Compared, Problem> compare(
            List<PublishedSource> sources,
            FormulationChoice choice,
            OptionalDouble level,
            String version,
            Optional<String> created) {
        Outcome<FormulationChoice.Chosen, Problem> chosen = choice.among(sources);
        if (!chosen.reasons().isEmpty()) {
            return new Outcome.Refused<>(chosen.reasons());
        }
        FormulationChoice.Chosen found = chosen.orElseThrow();
        List<ChosenFormulation> all = new ArrayList<>(List.of(found.baseline()));
        all.addAll(found.candidates());
        Optional<Problem> shared = SharedMeasurements.among(all);
        if (shared.isPresent()) {
            return wrong(shared.get());
        }
        ComparisonOptions options = ComparisonOptions.defaults()
                .withLevel(level.orElse(sources.get(0).document().campaign().confidence()));
        List<Propellant> propellants = new ArrayList<>();
        for (ChosenFormulation each : all) {
            try {
                propellants.add(PublishedFormulation.propellant(each.formulation(), each.id()));
            } catch (IllegalArgumentException edited) {
                return wrong(inconsistent(each, String.valueOf(edited.getMessage())));
            }
        }
        Propellant baseline = propellants.get(0);
        List<Propellant> candidates = propellants.subList(1, propellants.size());
        List<Comparison> comparisons = Comparisons.against(baseline, candidates, options);
        List<DoseTrend> trends = DoseTrends.ofEach(baseline, candidates, options);
        List<String> caveats = Caveats.of(all);
        return new Outcome.Given<>(new Compared(
                new MergedDocument(all, options.level(), version, created).with(comparisons, trends, caveats),
                caveats));
    }

    private static Outcome<Compared, Problem> wrong(Problem problem) {
        return new Outcome.Refused<>(List.of(problem));
    }

    private static Problem inconsistent(ChosenFormulation chosen, String found) {
        return new Problem(
                chosen.source().file().path(),
                0,
                chosen.id(),
                "no run writes a document like this",
                found,
                "a document as a run wrote it",
                "take an unedited burnlaw.json of a run");
    }
}
