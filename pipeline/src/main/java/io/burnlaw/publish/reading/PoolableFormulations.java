package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which formulation of each document is pooled, and what makes one of them another propellant than the first. */
final class PoolableFormulations {

    /** Densities further apart than this, and than their uncertainties explain, are those of two propellants [1]. */
    private static final double SAME_DENSITY = 0.01;

    private static final double SURE = 3;

    private PoolableFormulations() {}

    /**
     * Chooses them.
     *
     * @param sources  two at least
     * @param wanted   id in all of them; where empty the only one they have in common
     * @param problems takes why they cannot be pooled
     * @return one a document, where there is no problem
     */
    static List<ChosenFormulation> of(List<PublishedSource> sources, Optional<String> wanted, List<Problem> problems) {
        List<ChosenFormulation> chosen = choose(sources, wanted, problems);
        if (problems.isEmpty()) {
            chosen.forEach(each -> problems.addAll(unlike(chosen.get(0), each)));
            SharedMeasurements.among(chosen)
                    .map(same -> new Problem(
                            same.file(),
                            same.line(),
                            same.place(),
                            same.what(),
                            same.found(),
                            same.expected(),
                            "leave one of the two out"))
                    .ifPresent(problems::add);
        }
        return chosen;
    }

    private static List<ChosenFormulation> choose(
            List<PublishedSource> sources, Optional<String> wanted, List<Problem> problems) {
        Set<String> common = new HashSet<>(idsOf(sources.get(0)));
        sources.forEach(source -> common.retainAll(idsOf(source)));
        Optional<String> id =
                wanted.or(() -> common.size() == 1 ? common.stream().findFirst() : Optional.empty());
        List<ChosenFormulation> chosen = new ArrayList<>();
        for (PublishedSource source : sources) {
            Optional<Formulation> found = source.document().formulations().stream()
                    .filter(each -> id.filter(each.id()::equals).isPresent())
                    .findFirst();
            found.ifPresent(each -> chosen.add(new ChosenFormulation(source, each, each.id())));
            if (found.isEmpty()) {
                problems.add(problem(
                        source,
                        wanted.isPresent()
                                ? "there is no formulation " + wanted.get()
                                : "it is not clear which formulation to pool",
                        String.join(", ", idsOf(source)),
                        "one formulation that all documents name alike",
                        common.isEmpty()
                                ? "give it one id in all campaigns"
                                : "name it   --formulation "
                                        + common.stream().sorted().findFirst().orElseThrow()));
            }
        }
        if (problems.isEmpty()) {
            chosen.forEach(each -> {
                problems.addAll(PlannableNumbers.problems(
                        each.source().file().path(),
                        each.formulation(),
                        Optional.empty(),
                        each.source().document().campaign()));
                if (each.formulation().points().stream().noneMatch(Point::used)) {
                    problems.add(problem(
                            each.source(), "it has no point that was used", each.id(), "one at least", "leave it out"));
                }
            });
        }
        return chosen;
    }

    private static List<String> idsOf(PublishedSource source) {
        return source.document().formulations().stream().map(Formulation::id).toList();
    }

    /** What makes it another propellant than the first one. */
    private static List<Problem> unlike(ChosenFormulation first, ChosenFormulation other) {
        List<Problem> problems = new ArrayList<>();
        Formulation one = first.formulation();
        Formulation two = other.formulation();
        if (!sameText(one.additive(), two.additive()) || !close(one.additiveFraction(), two.additiveFraction())) {
            problems.add(problem(
                    other.source(),
                    "its additive differs",
                    additive(two),
                    additive(one),
                    "pool campaigns of one formulation only"));
        }
        Optional<Measured> dense = PooledInputs.density(one);
        Optional<Measured> light = PooledInputs.density(two);
        if (dense.isPresent() && light.isPresent()) {
            double apart = Math.abs(dense.get().value() - light.get().value());
            double doubt = Math.hypot(dense.get().stdOr(0), light.get().stdOr(0));
            if (apart > SAME_DENSITY * dense.get().value() && apart > SURE * doubt) {
                problems.add(problem(
                        other.source(),
                        "its density differs too much for one propellant",
                        Sentence.of("%.3f g/cm3", light.get().value() / 1e3),
                        Sentence.of("%.3f g/cm3", dense.get().value() / 1e3),
                        "pool campaigns of one formulation only"));
            }
        }
        return problems;
    }

    private static boolean sameText(@Nullable String one, @Nullable String two) {
        return one == null ? two == null : one.equals(two);
    }

    private static boolean close(@Nullable Double one, @Nullable Double two) {
        return one == null || two == null ? one == null && two == null : Math.abs(one - two) < 1e-9;
    }

    private static String additive(Formulation formulation) {
        return formulation.additive() == null
                ? "none"
                : formulation.additive()
                        + (formulation.additiveFraction() == null
                                ? ""
                                : Sentence.of(", %.3g %%", 100 * formulation.additiveFraction()));
    }

    private static Problem problem(PublishedSource source, String what, String found, String expected, String mend) {
        return new Problem(source.file().path(), 0, "", what, found, expected, mend);
    }
}
