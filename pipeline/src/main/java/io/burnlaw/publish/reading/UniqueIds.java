package io.burnlaw.publish.reading;

import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Ids that were unique in their campaigns, made unique over several campaigns. */
final class UniqueIds {

    private UniqueIds() {}

    /** The same formulations; ids that stand twice carry the name of their document. */
    static List<ChosenFormulation> of(List<ChosenFormulation> formulations) {
        Map<String, Long> count =
                formulations.stream().collect(Collectors.groupingBy(ChosenFormulation::id, Collectors.counting()));
        Map<PublishedSource, String> labels = labels(
                formulations.stream().map(ChosenFormulation::source).distinct().toList());
        return formulations.stream()
                .map(each -> count.get(each.id()) == 1
                        ? each
                        : each.called(each.id() + " (" + labels.get(each.source()) + ")"))
                .toList();
    }

    /**
     * How the points and firings of a document are called beside those of others.
     *
     * @return for each document, from the id there to the id among all: the same, where no other document has any of
     *         its ids
     */
    static Map<PublishedSource, Function<String, String>> of(
            List<PublishedSource> sources, Function<PublishedSource, Set<String>> ids) {
        Map<PublishedSource, String> labels = labels(sources);
        return sources.stream().collect(Collectors.toMap(Function.identity(), source -> {
            Set<String> mine = ids.apply(source);
            Set<String> others = new HashSet<>();
            sources.stream().filter(each -> each != source).forEach(each -> others.addAll(ids.apply(each)));
            others.retainAll(mine);
            String label = labels.get(source);
            return others.isEmpty() ? id -> id : id -> id + " (" + label + ")";
        }));
    }

    /** Short names where they differ, else the paths. */
    private static Map<PublishedSource, String> labels(List<PublishedSource> sources) {
        boolean tell = sources.stream().map(PublishedSource::label).distinct().count() == sources.size();
        return sources.stream()
                .collect(Collectors.toMap(
                        Function.identity(),
                        each -> tell ? each.label() : each.file().path()));
    }
}
