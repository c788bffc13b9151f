package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.characterize.CampaignCheck.SameRecords;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.CampaignResult.Predictions;
import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.characterize.FiredMotor.Fired;
import io.burnlaw.characterize.FormulationResult.PointResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.planning.Plan;
import io.burnlaw.prediction.PredictionCheck;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.CampaignPlausibility;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.RegimeKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Computes all results of a campaign: reads records, reduces firings, fits laws. */
public final class Characterizer {

    private Characterizer() {}

    /**
     * Characterizes a campaign. Records are read one at a time a worker and forgotten once reduced; nothing depends on
     * the number of workers.
     *
     * @param workers  firings reduced at the same time, at least 1
     * @param progress told of the firings that are done
     * @return all that it gave; firings that gave nothing stand in it as rejections
     */
    public static CampaignResult characterize(Campaign campaign, int workers, Progress progress) {
        return characterize(campaign, workers, progress, NumberStore.MEMORY);
    }

    /**
     * Characterizes a campaign whose firings may be too many for the memory.
     *
     * @param workers  firings reduced at the same time, at least 1
     * @param progress told of the firings that are done
     * @param store    where the courses of the firings are kept; as long as the result is used
     * @return all that it gave, as without a store
     */
    public static CampaignResult characterize(Campaign campaign, int workers, Progress progress, NumberStore store) {
        return Workers.run(workers, () -> worked(campaign, progress, store));
    }

    private static CampaignResult worked(Campaign campaign, Progress progress, NumberStore store) {
        List<FiringResult> firings = firings(campaign, progress, store);
        campaign.unusableRows().forEach(row -> firings.add(FiringWork.of(row)));
        List<StrandResult> strands = Workers.map(
                campaign.strands(), strand -> StrandWork.of(campaign, strand, store), progress, "strands reduced");
        sameRecords(firings, strands);
        List<FormulationResult> formulations = Workers.map(
                campaign.formulations(),
                formulation -> formulation(campaign, formulation, firings, strands),
                progress,
                "formulations fitted");
        List<FiringResult> seen = Guard.around(
                () -> SlowFirings.told(firings, formulations), "the search for slow firings", fault -> firings);
        List<Predictions> outlooks =
                Workers.map(formulations, result -> outlook(campaign, result, seen, store), progress, "laws tried out");
        double level = campaign.fit().confidence();
        return new CampaignResult(
                campaign,
                inputs(campaign, seen, strands),
                notes(campaign, seen, strands),
                seen,
                strands,
                formulations,
                outlooks,
                ComparisonWork.comparisons(formulations, level),
                ComparisonWork.trends(formulations, level));
    }

    /**
     * A campaign whose points were measured and reduced elsewhere.
     *
     * @param campaign with one formulation, settings and batches; without firings
     */
    public static CampaignResult pooled(Campaign campaign, List<RatePoint> points) {
        Formulation formulation = campaign.formulations().get(0);
        FormulationResult result = Workers.run(
                2,
                () -> Guard.around(
                        () -> FormulationWork.of(campaign, formulation, points, List.of()),
                        "the law of " + formulation.id(),
                        fault -> FormulationWork.failed(formulation, points, fault)));
        String none = "No firing is predicted: the points come from several campaigns.";
        return new CampaignResult(
                campaign,
                campaign.inputs(),
                campaign.notes(),
                List.of(),
                List.of(),
                List.of(result),
                List.of(new Predictions(
                        new PredictionCheck.NotPredicted(none),
                        new Plan.Refused(
                                formulation.id(),
                                "none",
                                OptionalDouble.empty(),
                                "No throat is named: no motor of this propellant is known. Give one to burnlaw plan with --grain.",
                                Plan.CAUTIONS),
                        Optional.empty())),
                List.of(),
                List.of());
    }

    /** Those with a record first: their c* is needed by those that were only timed. All in the order of the log. */
    private static List<FiringResult> firings(Campaign campaign, Progress progress, NumberStore store) {
        List<Firing> recorded = campaign.firings().stream()
                .filter(firing -> firing.trace().isPresent())
                .toList();
        List<FiringResult> alone = Workers.map(
                recorded,
                firing -> FiringWork.of(campaign, firing, Optional.empty(), store),
                progress,
                "firings reduced");
        List<FiringResult> results = reviewed(UnstatedIgniters.considered(campaign, recorded, alone, store, progress));
        if (recorded.size() == campaign.firings().size()) {
            return results;
        }
        Map<String, FiringResult> byId = new HashMap<>();
        results.forEach(result -> byId.put(result.id(), result));
        return campaign.firings().stream()
                .map(firing -> Optional.ofNullable(byId.get(firing.id()))
                        .orElseGet(
                                () -> FiringWork.of(campaign, firing, velocity(results, firing.formulation()), store)))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static Optional<Measured> velocity(List<FiringResult> recorded, String formulation) {
        return PooledVelocity.of(recorded.stream()
                .filter(result -> result.formulation().equals(formulation))
                .flatMap(result -> result.reduction().match(Stream::of, rejected -> Stream.<Reduction.Reduced>empty()))
                .toList());
    }

    /** What can only be seen beside the other firings of the same propellant. */
    private static List<FiringResult> reviewed(List<FiringResult> alone) {
        Map<String, List<Integer>> byFormulation = new TreeMap<>();
        IntStream.range(0, alone.size())
                .forEach(i -> byFormulation
                        .computeIfAbsent(alone.get(i).formulation(), id -> new ArrayList<>())
                        .add(i));
        List<FiringResult> reviewed = new ArrayList<>(alone);
        for (List<Integer> series : byFormulation.values()) {
            List<Reduction> own =
                    series.stream().map(i -> alone.get(i).reduction()).toList();
            List<Reduction> beside =
                    Guard.around(() -> CampaignPlausibility.review(own), "the review of the firings", fault -> own);
            for (int k = 0; k < series.size(); k++) {
                reviewed.set(series.get(k), alone.get(series.get(k)).withReduction(beside.get(k)));
            }
        }
        return reviewed;
    }

    /** The same bytes under two names are one burn that would count twice. */
    private static void sameRecords(List<FiringResult> firings, List<StrandResult> strands) {
        SameRecords records = new SameRecords();
        firings.replaceAll(each -> each.reduction() instanceof Reduction.Reduced reduced
                ? records.seen(each.id(), each.input())
                        .map(same -> each.withReduction(reduced.withFindings(List.of(same))))
                        .orElse(each)
                : each);
        strands.replaceAll(each -> each.reduction() instanceof StrandReduction.Reduced reduced
                ? records.seen(each.strand().id(), each.input())
                        .map(same -> each.withReduction(reduced.withFinding(same)))
                        .orElse(each)
                : each);
    }

    private static FormulationResult formulation(
            Campaign campaign, Formulation formulation, List<FiringResult> firings, List<StrandResult> strands) {
        List<Reduction.Reduced> reduced = firings.stream()
                .filter(firing -> firing.formulation().equals(formulation.id()))
                .flatMap(firing -> firing.reduction().match(Stream::of, rejected -> Stream.<Reduction.Reduced>empty()))
                .toList();
        Stream<RatePoint> ofStrands = strands.stream()
                .filter(strand -> strand.strand().formulation().equals(formulation.id()))
                .flatMap(strand -> strand.reduction()
                        .match(found -> Stream.of(found.point()), rejected -> Stream.<RatePoint>empty()));
        Stream<RatePoint> stated = campaign.points().stream()
                .filter(point -> point.formulation().equals(formulation.id()))
                .map(DirectPoints::of);
        List<RatePoint> points = Stream.of(
                        reduced.stream().flatMap(firing -> firing.points().stream()), ofStrands, stated)
                .flatMap(part -> part)
                .toList();
        return Guard.around(
                () -> FormulationWork.of(campaign, formulation, points, reduced),
                "the law of " + formulation.id(),
                fault -> FormulationWork.failed(formulation, points, fault));
    }

    private static Predictions outlook(
            Campaign campaign, FormulationResult result, List<FiringResult> firings, NumberStore store) {
        Map<String, Firing> rows = new TreeMap<>();
        campaign.firings().forEach(row -> rows.put(row.id(), row));
        List<Fired> fired = firings.stream()
                .filter(firing ->
                        firing.formulation().equals(result.formulation().id()))
                .flatMap(firing -> firing.reduction()
                        .match(
                                reduced -> Stream.of(new Fired(rows.get(firing.id()), reduced)),
                                rejected -> Stream.<Fired>empty()))
                .toList();
        ForkJoinTask<PlanWork.Made> planning = Workers.fork(() -> PlanWork.of(campaign, result, fired));
        PredictionCheck closure = Guard.around(
                () -> PredictionCheckWork.of(result, fired, store),
                "the prediction check of " + result.formulation().id(),
                fault -> new PredictionCheck.NotPredicted(fault.message()));
        PlanWork.Made planned = planning.join();
        return new Predictions(closure, planned.plan(), planned.basis());
    }

    private static List<InputFile> inputs(Campaign campaign, List<FiringResult> firings, List<StrandResult> strands) {
        Map<String, InputFile> byPath = new TreeMap<>();
        Stream.of(
                        campaign.inputs().stream(),
                        firings.stream().flatMap(firing -> firing.input().stream()),
                        strands.stream().flatMap(strand -> strand.input().stream()))
                .flatMap(part -> part)
                // A file that changed between two readings stands there as both saw it.
                .forEach(input -> byPath.putIfAbsent(input.path() + '\0' + input.sha256(), input));
        return List.copyOf(byPath.values());
    }

    private static List<String> notes(Campaign campaign, List<FiringResult> firings, List<StrandResult> strands) {
        ReadingNotes notes = new ReadingNotes();
        firings.forEach(firing -> firing.trace().ifPresent(trace -> notes.add(trace, firing.readingNotes())));
        strands.forEach(strand -> notes.add(strand.strand().trace(), strand.readingNotes()));
        return Stream.concat(campaign.notes().stream(), notes.merged().stream()).toList();
    }

    /** Reports every firing whose whole burn was in a slow regime, once the laws show that there is one. */
    private static final class SlowFirings {

        private SlowFirings() {}

        static List<FiringResult> told(List<FiringResult> firings, List<FormulationResult> formulations) {
            Map<String, Regime> slow = new HashMap<>();
            for (FormulationResult result : formulations) {
                result.regimes().stream()
                        .filter(found -> found.selected() > 1)
                        .flatMap(found -> found.regimes().stream())
                        .filter(regime -> regime.kind() == RegimeKind.SLOW_BURNING)
                        .forEach(regime -> result.points().stream()
                                .map(PointResult::point)
                                .filter(point -> point.source() == RatePoint.Source.FIRING)
                                .filter(point -> regime.ids().contains(point.id()))
                                .forEach(point -> slow.put(point.cluster(), regime)));
            }
            return firings.stream()
                    .map(firing -> slow.containsKey(firing.id()) ? told(firing, slow.get(firing.id())) : firing)
                    .toList();
        }

        private static FiringResult told(FiringResult firing, Regime regime) {
            if (!(firing.reduction() instanceof Reduction.Reduced reduced)
                    || reduced.findings().stream().anyMatch(each -> each.code() == FindingCode.SLOW_BURNING)) {
                return firing;
            }
            String message = "The whole burn, at "
                    + NumberFormat.significant(Unit.MEGAPASCAL.fromSi(reduced.meanPressure()), 3)
                    + " MPa on average, followed the slow law of this propellant, which is valid up to "
                    + NumberFormat.significant(Unit.MEGAPASCAL.fromSi(regime.high()), 3) + " MPa.";
            return firing.withReduction(reduced.withFindings(List.of(Finding.at(
                    FindingCode.SLOW_BURNING, message, reduced.events().ignition()))));
        }
    }
}
