package io.burnlaw.characterize;

import io.burnlaw.batch.BatchFit;
import io.burnlaw.batch.BatchPoint;
import io.burnlaw.batch.BatchResult;
import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Regime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Batches and regimes of one formulation together. A batch that burns faster must not be taken for a regime, nor a
 * regime for a difference between batches: both are searched in turn until neither changes.
 *
 * @param batches by the id of the firing or point
 * @param level   of confidence [1]
 */
record BatchWork(Map<String, String> batches, double level) {

    private static final int MOST_ROUNDS = 4;

    /** Breaks that move by less than this share of their pressure have settled. */
    private static final double SETTLED = 0.01;

    /**
     * What was found.
     *
     * @param regimes of the average batch, their laws as uncertain as the batches make them
     * @param law     over the batches; empty where no point names one
     * @param doubt   whether batch and pressure can be told apart
     */
    record Found(Optional<Regimes> regimes, Optional<BatchResult> law, Optional<Finding> doubt) {}

    /**
     * Looks for regimes and for differences between batches.
     *
     * @param search for regimes among points
     */
    Found find(List<FitPoint> points, Function<List<FitPoint>, Optional<Regimes>> search) {
        long named = points.stream()
                .filter(point -> batches.containsKey(point.cluster()))
                .count();
        if (named == 0) {
            return new Found(search.apply(points), Optional.empty(), Optional.empty());
        }
        if (named < points.size()) {
            return new Found(
                    search.apply(points),
                    Optional.of(new BatchResult.NotFitted(
                            Sentence.of("%d of %d points name no batch.", points.size() - named, points.size()),
                            "Fill in the column batch for each row.")),
                    Optional.empty());
        }
        Optional<Regimes> regimes = Optional.empty();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            if (!(fit(points, regimes) instanceof BatchLaw law)) {
                regimes = search.apply(points);
                break;
            }
            Optional<Regimes> next = search.apply(levelled(points, law));
            boolean settled = settled(regimes, next);
            regimes = next;
            if (settled) {
                break;
            }
        }
        BatchResult over = fit(points, regimes);
        return over instanceof BatchLaw law
                ? new Found(regimes.map(found -> widened(found, law)), Optional.of(law), doubt(points, regimes, search))
                : new Found(regimes, Optional.of(over), Optional.empty());
    }

    /** Where the points would follow several laws if batches were all alike, and follow one if batches may differ. */
    private static Optional<Finding> doubt(
            List<FitPoint> points, Optional<Regimes> regimes, Function<List<FitPoint>, Optional<Regimes>> search) {
        if (regimes.isEmpty() || regimes.get().selected() > 1) {
            return Optional.empty();
        }
        return search.apply(points)
                .filter(alike -> alike.selected() > 1)
                .map(alike -> Finding.of(
                        FindingCode.BATCH_OR_REGIME,
                        Sentence.of(
                                "If all batches burned alike, there would be %d laws with a change near %s MPa. If batches may differ,"
                                        + " one law explains the same rates.",
                                alike.selected(),
                                NumberFormat.megapascal(alike.breaks().get(0).pressure()))));
    }

    private BatchResult fit(List<FitPoint> points, Optional<Regimes> regimes) {
        List<String> apart = regimes.map(Regimes::apart).orElse(List.of());
        return BatchFit.fit(
                points.stream()
                        .filter(point -> !apart.contains(point.id()))
                        .map(point -> new BatchPoint(straightened(point, regimes), batches.get(point.cluster())))
                        .toList(),
                level);
    }

    /** Where there are several laws, the point as far off the one with most points as it lies off its own. */
    private static FitPoint straightened(FitPoint point, Optional<Regimes> regimes) {
        if (regimes.isEmpty() || regimes.get().selected() < 2) {
            return point;
        }
        double pressure = point.pressure();
        return point.moved(
                pressure,
                point.rate()
                        * main(regimes.get()).law().rate(pressure)
                        / regimes.get().rate(pressure));
    }

    private static Regime main(Regimes regimes) {
        return regimes.regimes().stream()
                .max(Comparator.comparingInt(regime -> regime.ids().size()))
                .orElseThrow();
    }

    /** The points as if all were of the average batch; a batch of few firings is moved by what the others make likely. */
    private List<FitPoint> levelled(List<FitPoint> points, BatchLaw law) {
        double between = law.betweenStd() * law.betweenStd();
        double within = law.withinStd() * law.withinStd();
        Map<String, Double> factors = new HashMap<>();
        law.members()
                .forEach(each -> factors.put(
                        each.id(),
                        StrictMath.pow(
                                each.ratio(), -between * each.points() / (between * each.points() + within + 1e-30))));
        return points.stream()
                .map(point -> point.moved(
                        point.pressure(), point.rate() * factors.getOrDefault(batches.get(point.cluster()), 1.0)))
                .toList();
    }

    private static boolean settled(Optional<Regimes> before, Optional<Regimes> after) {
        int count = before.map(Regimes::selected).orElse(1);
        if (count != after.map(Regimes::selected).orElse(1)) {
            return false;
        }
        for (int i = 0; i < count - 1; i++) {
            double was = before.get().breaks().get(i).pressure();
            if (Math.abs(after.get().breaks().get(i).pressure() - was) > SETTLED * was) {
                return false;
            }
        }
        return true;
    }

    /** Laws of the average batch of those fired, as laws of any batch: the mean is as uncertain as that of so few batches. */
    private static Regimes widened(Regimes regimes, BatchLaw law) {
        if (regimes.selected() < 2 || !(law.betweenStd() > 0)) {
            return regimes;
        }
        return new Regimes(
                regimes.claim(),
                regimes.shape(),
                regimes.regimes().stream()
                        .map(each -> new Regime(
                                widened(each.law(), law),
                                each.kind(),
                                each.settled(),
                                each.exponentInterval(),
                                each.low(),
                                each.high(),
                                each.ids(),
                                each.sentence()))
                        .toList(),
                regimes.breaks(),
                regimes.evidence(),
                regimes.unsettled(),
                regimes.off(),
                regimes.findings());
    }

    private static RateLaw widened(RateLaw own, BatchLaw batches) {
        int count = batches.members().size();
        double between = batches.betweenStd() * batches.betweenStd();
        return new RateLaw(
                own.lnRateAtReference(),
                own.exponent(),
                own.referencePressure(),
                own.rateVariance() + between / count,
                own.covariance(),
                own.exponentVariance(),
                Math.min(own.degreesOfFreedom(), count - 1),
                Math.hypot(own.residualScatter(), batches.betweenStd()),
                own.pressureLow(),
                own.pressureHigh(),
                own.points(),
                own.weighting(),
                own.commonError());
    }
}
