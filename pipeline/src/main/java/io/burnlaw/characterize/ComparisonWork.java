package io.burnlaw.characterize;

import io.burnlaw.comparison.Comparison;
import io.burnlaw.comparison.ComparisonOptions;
import io.burnlaw.comparison.Comparisons;
import io.burnlaw.comparison.DoseTrends;
import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.comparison.Propellant;
import io.burnlaw.finding.Finding;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.regime.Regimes.Break;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** All candidates of a campaign against their baselines. */
final class ComparisonWork {

    private ComparisonWork() {}

    /**
     * Compares every formulation that names another one to compare it with.
     *
     * @param level        of the intervals [1]
     * @return comparisons, candidates of one baseline as one family
     */
    static List<Comparison> comparisons(List<FormulationResult> formulations, double level) {
        List<Comparison> all = new ArrayList<>();
        families(formulations)
                .forEach((baseline, candidates) -> all.addAll(Guard.around(
                        () -> Comparisons.against(
                                baseline,
                                candidates,
                                ComparisonOptions.defaults().withLevel(level)),
                        "the comparisons with " + baseline.id(),
                        fault -> notCompared(baseline, candidates, fault))));
        return all;
    }

    /**
     * Follows every additive over its fractions.
     *
     * @param level        of the intervals [1]
     * @return a trend for each additive with two levels or more
     */
    static List<DoseTrend> trends(List<FormulationResult> formulations, double level) {
        List<DoseTrend> all = new ArrayList<>();
        families(formulations)
                .forEach((baseline, candidates) -> all.addAll(Guard.around(
                        () -> DoseTrends.ofEach(
                                baseline,
                                candidates,
                                ComparisonOptions.defaults().withLevel(level)),
                        "the trends over additives to " + baseline.id(),
                        fault -> List.of())));
        return all;
    }

    private static List<Comparison> notCompared(Propellant baseline, List<Propellant> candidates, Finding fault) {
        return candidates.stream()
                .map(candidate -> (Comparison) new Comparison.NotCompared(
                        baseline.id(), candidate.id(), candidate.additive(), candidate.fraction(), fault.message()))
                .toList();
    }

    private static Map<Propellant, List<Propellant>> families(List<FormulationResult> formulations) {
        Map<String, Propellant> byId = new LinkedHashMap<>();
        formulations.forEach(each -> byId.put(each.formulation().id(), propellant(each)));
        Map<Propellant, List<Propellant>> families = new LinkedHashMap<>();
        for (FormulationResult each : formulations) {
            Optional<Propellant> baseline = each.formulation().compareWith().map(byId::get);
            baseline.ifPresent(found -> families.computeIfAbsent(found, key -> new ArrayList<>())
                    .add(byId.get(each.formulation().id())));
        }
        return families;
    }

    private static Propellant propellant(FormulationResult result) {
        return new Propellant(
                result.formulation().id(),
                result.formulation().additive(),
                result.formulation().additiveFraction(),
                result.fitPoints(),
                result.fit().fitted().map(FitResult.Fitted::law),
                result.points().stream()
                        .filter(point -> point.batch().isPresent())
                        .collect(Collectors.toMap(
                                point -> point.point().cluster(),
                                point -> point.batch().get(),
                                (a, b) -> a)),
                result.regimes()
                        .map(found ->
                                found.breaks().stream().map(Break::pressure).toList())
                        .orElse(List.of()));
    }
}
