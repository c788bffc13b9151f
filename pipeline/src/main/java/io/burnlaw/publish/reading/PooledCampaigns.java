package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Problem;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.finding.Outcome;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.Planner;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.publish.PlanDocument;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Several campaigns of one formulation as one, from their published documents alone. Each batch, and each campaign
 * whose points name none, is a level of the law over batches; differences between stands count with the batches.
 */
public final class PooledCampaigns {

    private final List<ChosenFormulation> all;
    private final Map<PublishedSource, Function<String, String>> ids;
    private final Map<PublishedSource, Function<String, String>> batchNames;
    private final Map<PublishedSource, String> labels = new HashMap<>();
    private final String version;
    private final Optional<String> created;

    private PooledCampaigns(List<ChosenFormulation> all, String version, Optional<String> created) {
        this.all = all;
        this.version = version;
        this.created = created;
        List<PublishedSource> sources =
                all.stream().map(ChosenFormulation::source).toList();
        this.ids = UniqueIds.of(sources, MergedDocument::idsOf);
        this.batchNames = UniqueIds.of(sources, this::batches);
        for (PublishedSource source : sources) {
            boolean told =
                    sources.stream().map(PublishedSource::label).distinct().count() == sources.size();
            labels.put(source, told ? source.label() : source.file().path());
        }
    }

    /**
     * Pools.
     *
     * @param sources     two at least
     * @param formulation id in all of them; where empty the only one they have in common
     * @param created     when, ISO 8601 with zone; empty in reproducible documents
     * @return the pooled document, or why there is none
     */
    public static Outcome<Characterization, Problem> pool(
            List<PublishedSource> sources, Optional<String> formulation, String version, Optional<String> created) {
        List<Problem> problems = new ArrayList<>();
        List<ChosenFormulation> chosen = PoolableFormulations.of(sources, formulation, problems);
        return problems.isEmpty()
                ? new Outcome.Given<>(new PooledCampaigns(chosen, version, created).document())
                : new Outcome.Refused<>(problems);
    }

    private Set<String> batches(PublishedSource source) {
        return of(source).points().stream()
                .flatMap(point -> Stream.ofNullable(point.batch()))
                .collect(Collectors.toSet());
    }

    private Formulation of(PublishedSource source) {
        return all.stream()
                .filter(each -> each.source().equals(source))
                .findFirst()
                .orElseThrow()
                .formulation();
    }

    private Characterization document() {
        Map<String, String> batches = new HashMap<>();
        List<RatePoint> points = new ArrayList<>();
        for (ChosenFormulation each : all) {
            Function<String, String> own = ids.get(each.source());
            double shared = shared(each.formulation().singleLaw());
            for (Point point : each.formulation().points()) {
                points.add(point(point, each.id(), own, shared));
                batches.put(
                        own.apply(point.cluster()),
                        point.batch() == null
                                ? labels.get(each.source())
                                : batchNames.get(each.source()).apply(point.batch()));
            }
        }
        Campaign campaign = new PooledInputs(all).campaign(batches);
        CampaignResult result = Characterizer.pooled(campaign, points);
        Characterization pooled = CharacterizationDocument.result(result, version, created, false);
        return with(pooled, firings(), plan(pooled));
    }

    /** Relative standard deviation of what the firings of one stand share, at the reference pressure [1]. */
    private static double shared(@Nullable Law law) {
        return law == null || law.sharedCovariance() == null
                ? 0
                : Math.sqrt(Math.max(0, law.sharedCovariance().get(0).get(0)));
    }

    private static RatePoint point(Point point, String formulation, Function<String, String> own, double shared) {
        double pressure = PublishedFormulation.si(point.pressure());
        double pressureStd = PooledInputs.measured(point.pressure()).stdOr(0);
        double rate = PublishedFormulation.si(point.rate());
        double rateStd = PooledInputs.measured(point.rate()).stdOr(0);
        return new RatePoint(
                own.apply(point.id()),
                own.apply(point.cluster()),
                Optional.ofNullable(point.firing()).map(own),
                formulation,
                RatePoint.Source.valueOf(point.source().toUpperCase(Locale.ROOT)),
                PressureDistribution.constant(pressure),
                pressureStd,
                rate,
                rateStd,
                Math.min(rateStd, shared * rate),
                point.temperature() == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(PublishedFormulation.si(point.temperature())),
                point.method(),
                point.lowerGrade(),
                point.used()
                        ? Optional.empty()
                        : Optional.of(Optional.ofNullable(point.reason()).orElse("not used")),
                List.of(),
                new PressureError(pressureStd / pressure, 0, 0));
    }

    private List<Firing> firings() {
        return all.stream()
                .flatMap(each -> each.source().document().firings().stream()
                        .filter(firing ->
                                firing.formulation().equals(each.formulation().id()))
                        .map(firing -> firing.called(ids.get(each.source()).apply(firing.id()), each.id())))
                .toList();
    }

    /** For the motor that was planned for last, by the pooled law. */
    private List<Plan> plan(Characterization pooled) {
        Formulation formulation = pooled.formulations().get(0);
        List<Plan> known = all.stream()
                .flatMap(each -> each.source().document().plans().stream()
                        .filter(plan ->
                                plan.formulation().equals(each.formulation().id()) && plan.motor() != null))
                .toList();
        if (known.isEmpty()) {
            return pooled.plans();
        }
        OptionalDouble highest = known.stream()
                .flatMap(plan -> Stream.ofNullable(plan.motor().highestFired()))
                .mapToDouble(PublishedFormulation::si)
                .max();
        PlanOptions options =
                PlanOptions.defaults().withLevelOf(pooled.campaign().confidence());
        return PublishedFormulation.planBasis(formulation, known.get(known.size() - 1), pooled.campaign())
                .map(basis -> basis.withHighestFired(highest))
                .map(basis ->
                        List.of(PlanDocument.of(Planner.plan(basis, options), Optional.of(basis), options.level())))
                .orElse(pooled.plans());
    }

    private static Characterization with(Characterization pooled, List<Firing> firings, List<Plan> plans) {
        return new Characterization(
                pooled.format(),
                pooled.generator(),
                pooled.created(),
                pooled.campaign(),
                pooled.inputs(),
                pooled.formulations(),
                firings,
                pooled.comparisons(),
                pooled.doseTrends(),
                plans,
                pooled.cautions(),
                pooled.leftOut());
    }
}
