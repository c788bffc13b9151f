package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.finding.Outcome;
import io.burnlaw.report.document.Formulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Which formulations are compared: the baseline out of the first document, the candidates out of the others, or out of
 * the first where it is the only one.
 *
 * @param baseline   id; where empty the only formulation, or the only one that is marked as baseline
 * @param candidates ids; where empty all of them
 */
public record FormulationChoice(Optional<String> baseline, List<String> candidates) {

    public FormulationChoice {
        candidates = List.copyOf(candidates);
    }

    /** The baseline and at least one candidate, with ids of their own. */
    record Chosen(ChosenFormulation baseline, List<ChosenFormulation> candidates) {}

    /** {@return what was chosen, or what is wrong with the choice} */
    Outcome<Chosen, Problem> among(List<PublishedSource> sources) {
        PublishedSource first = sources.get(0);
        Optional<Formulation> found = baselineOf(first);
        if (found.isEmpty()) {
            return new Outcome.Refused<>(List.of(noBaseline(first)));
        }
        ChosenFormulation base = chosen(first, found.get());
        List<ChosenFormulation> there = new ArrayList<>();
        for (PublishedSource source : sources.size() == 1 ? sources : sources.subList(1, sources.size())) {
            source.document().formulations().stream()
                    .map(each -> chosen(source, each))
                    .filter(each -> sources.size() > 1 || !each.id().equals(base.id()))
                    .forEach(there::add);
        }
        for (String wanted : candidates) {
            if (there.stream().noneMatch(each -> each.id().equals(wanted))) {
                return new Outcome.Refused<>(List.of(noCandidate(sources, wanted, base, there)));
            }
        }
        List<ChosenFormulation> wanted = there.stream()
                .filter(each -> candidates.isEmpty() || candidates.contains(each.id()))
                .toList();
        if (wanted.isEmpty()) {
            return new Outcome.Refused<>(List.of(nothingElse(sources.get(sources.size() - 1), base)));
        }
        List<ChosenFormulation> all = new ArrayList<>(List.of(base));
        all.addAll(wanted);
        List<ChosenFormulation> named = UniqueIds.of(all);
        return new Outcome.Given<>(new Chosen(named.get(0), named.subList(1, named.size())));
    }

    private static ChosenFormulation chosen(PublishedSource source, Formulation formulation) {
        return new ChosenFormulation(source, formulation, formulation.id());
    }

    private Optional<Formulation> baselineOf(PublishedSource source) {
        List<Formulation> all = source.document().formulations();
        if (baseline.isPresent()) {
            return all.stream().filter(each -> each.id().equals(baseline.get())).findFirst();
        }
        List<Formulation> marked = all.stream().filter(Formulation::baseline).toList();
        return all.size() == 1
                ? Optional.of(all.get(0))
                : marked.size() == 1 ? Optional.of(marked.get(0)) : Optional.empty();
    }

    private Problem noBaseline(PublishedSource source) {
        List<Formulation> all = source.document().formulations();
        String ids = all.stream().map(Formulation::id).collect(Collectors.joining(", "));
        String mend = all.isEmpty()
                ? "take the document of a campaign with formulations"
                : "name it   --baseline " + all.get(0).id();
        return new Problem(
                source.file().path(),
                0,
                "",
                baseline.isPresent()
                        ? "there is no formulation " + baseline.get()
                        : "it is not clear which formulation is the baseline",
                ids.isEmpty() ? "no formulations" : ids,
                "one formulation, or one that is marked as baseline",
                mend);
    }

    private static Problem noCandidate(
            List<PublishedSource> sources, String wanted, ChosenFormulation base, List<ChosenFormulation> there) {
        String ids = there.stream().map(ChosenFormulation::id).distinct().collect(Collectors.joining(", "));
        return new Problem(
                sources.get(sources.size() - 1).file().path(),
                0,
                "",
                wanted.equals(base.id())
                        ? wanted + " is the baseline itself"
                        : "there is no formulation " + wanted + " to compare",
                ids.isEmpty() ? "no other formulation" : ids,
                "the id of a candidate",
                there.isEmpty()
                        ? "name a second document"
                        : "name it   --candidate " + there.get(0).id());
    }

    private static Problem nothingElse(PublishedSource source, ChosenFormulation base) {
        return new Problem(
                source.file().path(),
                0,
                "",
                "there is nothing to compare " + base.id() + " with",
                "no other formulation",
                "a candidate besides the baseline",
                "name the document of another campaign behind it");
    }

    /**
     * A formulation that takes part in a comparison.
     *
     * @param source      that it stands in
     * @param id          under which it is compared; ids of two documents may be the same
     */
    record ChosenFormulation(PublishedSource source, Formulation formulation, String id) {

        ChosenFormulation called(String other) {
            return new ChosenFormulation(source, formulation, other);
        }
    }
}
