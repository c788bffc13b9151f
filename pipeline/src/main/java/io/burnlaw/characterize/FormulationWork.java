package io.burnlaw.characterize;

import io.burnlaw.batch.BatchResult;
import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.FitSettings;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.characterize.FormulationResult.PointResult;
import io.burnlaw.characterize.UnloggedTemperature.ReferredRates;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.PooledExponent;
import io.burnlaw.ratelaw.PooledExponent.BurnCurve;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.ratelaw.RateLawFit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.PressureForRate;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import io.burnlaw.regime.PulsedFiring;
import io.burnlaw.regime.RegimeOptions;
import io.burnlaw.regime.RegimeSearch;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Thresholds;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** One formulation from its points to its laws. */
final class FormulationWork {

    /** Of the time of a burn, this share at its lowest and at its highest pressure is left to noise [1]. */
    private static final double EDGE = 0.02;

    private FormulationWork() {}

    /**
     * Fits all that can be fitted.
     *
     * @param points of it, used and set aside, in the order of the log
     */
    static FormulationResult of(
            Campaign campaign, Formulation formulation, List<RatePoint> points, List<Reduction.Reduced> reduced) {
        FormulationResult result = fitted(campaign, formulation, points, reduced);
        List<String> unconfirmed = UnconfirmedDwells.of(points, result.regimes());
        if (!unconfirmed.isEmpty()) {
            return fitted(campaign, formulation, UnconfirmedDwells.setAside(points, unconfirmed), reduced);
        }
        List<RatePoint> judged = UnconfirmedDwells.judged(points, result);
        return judged.equals(points) ? result : fitted(campaign, formulation, judged, reduced);
    }

    /**
     * The result where the program failed: no law, and all points shown.
     *
     * @return a formulation without a law
     */
    static FormulationResult failed(Formulation formulation, List<RatePoint> points, Finding fault) {
        FitResult none = new FitResult.NotFitted(fault.message(), "Check the units and dimensions of its rows.");
        List<PointResult> shown = points.stream()
                .map(point -> new PointResult(
                        point,
                        Optional.empty(),
                        point.pressures().powerMean(1),
                        point.rate(),
                        OptionalDouble.empty(),
                        OptionalInt.empty()))
                .toList();
        return new FormulationResult(
                formulation,
                Optional.empty(),
                0,
                shown,
                List.of(),
                none,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(fault.withSeverity(Severity.CAUTION)));
    }

    private static FormulationResult fitted(
            Campaign campaign, Formulation formulation, List<RatePoint> points, List<Reduction.Reduced> reduced) {
        FitOptions options = options(campaign.fit()).withLimit(limit(campaign));
        List<RatePoint> used =
                points.stream().filter(point -> point.setAside().isEmpty()).toList();
        double exponent = RateAveraging.exponent(used, options);
        ReferredRates rates = ReferredRates.of(campaign, used, RateAveraging.at(used, exponent), options);
        Optional<Measured> velocity = PooledVelocity.of(reduced).or(formulation::characteristicVelocity);
        // The two longest steps at the same time; where there is no law there is none to look for changes in.
        BatchWork batchWork = new BatchWork(campaign.batches(), campaign.fit().confidence());
        ForkJoinTask<BatchWork.Found> search = Workers.fork(() -> batchWork.find(
                rates.points(),
                levelled -> RateLawFit.law(levelled, options)
                        .map(law -> regimes(
                                levelled,
                                circumstances(used, reduced, PulsedFirings.of(campaign, formulation, velocity)),
                                campaign))));
        FitResult whole = RateLawFit.fit(rates.points(), options);
        BatchWork.Found found = search.join();
        Optional<Regimes> regimes = found.regimes();
        List<String> apart = regimes.map(Regimes::apart).orElse(List.of());
        FitResult fit = apart.isEmpty()
                ? whole
                : RateLawFit.fit(
                        rates.points().stream()
                                .filter(point -> !apart.contains(point.id()))
                                .toList(),
                        options);
        Optional<Threshold> threshold =
                regimes.flatMap(of -> Thresholds.find(of, value(formulation.density()), value(velocity)));
        List<Reduction.Reduced> alike = ofOneLaw(reduced, regimes, apart);
        Optional<Pooling> pooling = alike.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        PooledExponent.of(curves(alike, regimes), campaign.fit().confidence()));
        List<Finding> findings = new ArrayList<>();
        fit.fitted().ifPresent(fitted -> findings.addAll(fitted.findings()));
        Optional<BatchResult> batches = fit.fitted().flatMap(law -> found.law());
        if (batches.filter(BatchLaw.class::isInstance).isPresent()) {
            // firings repeated at one pressure come from other batches: the law over batches has a scatter for that
            findings.removeIf(finding -> finding.code() == FindingCode.LACK_OF_FIT);
        }
        found.doubt().ifPresent(findings::add);
        fit.fitted()
                .flatMap(law -> UnloggedTemperature.look(used, rates.points()))
                .ifPresent(findings::add);
        regimes.ifPresent(of -> findings.addAll(of.findings()));
        pooling.flatMap(Pooling::pooled).ifPresent(pooled -> findings.addAll(pooled.findings()));
        return new FormulationResult(
                formulation,
                velocity,
                exponent,
                results(points, campaign.batches(), exponent, rates.points(), fit, regimes, apart),
                rates.points(),
                fit,
                rates.sensitivity(),
                pooling,
                batches,
                regimes,
                threshold,
                regimes.map(of -> faster(of, rates.points(), campaign)).orElse(List.of()),
                findings.stream().distinct().toList());
    }

    private static PressureLimit limit(Campaign campaign) {
        return PressureLimit.of(campaign.hardware(), campaign.ambientPressure());
    }

    /** Points of firings with a caution that may have moved their rate; a slow burn is what the search looks for. */
    private static Set<String> cautioned(List<RatePoint> points, List<Reduction.Reduced> reduced) {
        Set<String> firings = reduced.stream()
                .filter(firing -> firing.findings().stream().anyMatch(FormulationWork::doubtful))
                .map(Reduction.Reduced::firing)
                .collect(Collectors.toSet());
        return points.stream()
                .filter(point -> point.firing().filter(firings::contains).isPresent())
                .map(RatePoint::id)
                .collect(Collectors.toSet());
    }

    private static RegimeSearch.Circumstances circumstances(
            List<RatePoint> points, List<Reduction.Reduced> reduced, List<PulsedFiring> pulsed) {
        Map<String, Regimes.Span> spans = points.stream()
                .filter(point -> point.source() == RatePoint.Source.FIRING)
                .collect(Collectors.toMap(
                        RatePoint::id,
                        point -> new Regimes.Span(
                                point.pressures().quantile(EDGE),
                                point.pressures().quantile(1 - EDGE))));
        return new RegimeSearch.Circumstances(cautioned(points, reduced), spans, pulsed);
    }

    private static boolean doubtful(Finding finding) {
        FindingCode.Family about = finding.code().family();
        return finding.severity() == Severity.CAUTION
                && (about == FindingCode.Family.BURNING || about == FindingCode.Family.PLAUSIBILITY)
                && finding.code() != FindingCode.SLOW_BURNING;
    }

    private static Regimes regimes(List<FitPoint> points, RegimeSearch.Circumstances about, Campaign campaign) {
        FitSettings settings = campaign.fit();
        return RegimeSearch.search(
                points,
                RegimeOptions.defaults(settings.seed())
                        .withWeighting(settings.weighting())
                        .withLevel(settings.confidence())
                        .withLimit(limit(campaign)),
                about);
    }

    private static List<FasterAnswer> faster(Regimes regimes, List<FitPoint> points, Campaign campaign) {
        double lowest = points.stream().mapToDouble(FitPoint::pressure).min().orElseThrow();
        return PressureForRate.answer(regimes, lowest, limit(campaign), PressureForRate.USUAL_FACTORS);
    }

    /**
     * Burns of one law only: an exponent across a change of law would be that of neither. Where there are several laws,
     * the one with most points; where the law is a smooth curve, none.
     */
    private static List<Reduction.Reduced> ofOneLaw(
            List<Reduction.Reduced> reduced, Optional<Regimes> regimes, List<String> apart) {
        if (regimes.map(Regimes::claim).orElse(Claim.SINGLE_LAW) == Claim.SMOOTH_CURVE) {
            return List.of();
        }
        return reduced.stream()
                .filter(firing -> !firing.along().isEmpty())
                .filter(firing -> firing.points().stream().noneMatch(point -> apart.contains(point.id())))
                .toList();
    }

    private static Stream<BurnCurve> curves(List<Reduction.Reduced> alike, Optional<Regimes> regimes) {
        Regimes.Span range = regimes.map(Regimes::widest).orElse(new Regimes.Span(0, Double.POSITIVE_INFINITY));
        return alike.stream()
                .map(firing ->
                        new BurnCurve(firing.firing(), firing.along().samples()).within(range.low(), range.high()));
    }

    private static List<PointResult> results(
            List<RatePoint> points,
            Map<String, String> batches,
            double exponent,
            List<FitPoint> fitted,
            FitResult fit,
            Optional<Regimes> regimes,
            List<String> apart) {
        Map<String, FitPoint> asFitted = new HashMap<>();
        fitted.forEach(point -> asFitted.put(point.id(), point));
        Map<String, Double> residuals = new HashMap<>();
        fit.fitted()
                .ifPresent(law ->
                        law.residuals().forEach(residual -> residuals.put(residual.id(), residual.studentized())));
        regimes.filter(found -> found.selected() > 1)
                .ifPresent(found -> found.regimes()
                        .forEach(regime -> regime.ids()
                                .forEach(id -> residuals.put(id, regime.law().studentized(asFitted.get(id))))));
        Map<String, Integer> segments = segments(regimes);
        List<String> off = regimes.map(Regimes::off).orElse(List.of());
        return points.stream()
                .map(point -> apart.contains(point.id())
                        // Few points of another regime would bend the law of the many: shown, said, not fitted with it.
                        ? point.withSetAside(
                                off.contains(point.id())
                                        ? "far from every law that the other points follow"
                                        : "probably in another regime, which has too few points for a law of its own")
                        : point)
                .map(point -> {
                    double pressure = point.pressures().powerMean(exponent);
                    FitPoint inFit = asFitted.get(point.id());
                    return new PointResult(
                            point,
                            Optional.ofNullable(batches.get(point.cluster())),
                            pressure,
                            inFit == null ? point.rate() : inFit.rate(),
                            residuals.containsKey(point.id())
                                    ? OptionalDouble.of(residuals.get(point.id()))
                                    : OptionalDouble.empty(),
                            inFit == null || !segments.containsKey(point.id())
                                    ? OptionalInt.empty()
                                    : OptionalInt.of(segments.get(point.id())));
                })
                .toList();
    }

    /** Number of its regime, from 1, by the id of the point; none where there is one law only. */
    private static Map<String, Integer> segments(Optional<Regimes> regimes) {
        Map<String, Integer> segments = new HashMap<>();
        regimes.filter(found -> found.selected() > 1)
                .ifPresent(found -> IntStream.range(0, found.selected())
                        .forEach(i -> found.regimes().get(i).ids().forEach(id -> segments.putIfAbsent(id, i + 1))));
        return segments;
    }

    private static OptionalDouble value(Optional<Measured> measured) {
        return measured.map(found -> OptionalDouble.of(found.value())).orElse(OptionalDouble.empty());
    }

    private static FitOptions options(FitSettings settings) {
        return FitOptions.defaults()
                .with(settings.weighting())
                .with(settings.pressure())
                .withLevel(settings.confidence())
                .withRobust(settings.robust())
                .withBootstrap(FitOptions.defaults().replicates(), settings.seed());
    }
}
