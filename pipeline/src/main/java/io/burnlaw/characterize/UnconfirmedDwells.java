package io.burnlaw.characterize;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Dwells that a regime would rest on alone. The rate in a dwell is as right as the belief that the whole surface was
 * alight in it; so a regime of its own needs a firing or a strand besides.
 */
final class UnconfirmedDwells {

    /** A rate within this of the law's is taken to be that of the whole surface [ln]. */
    private static final double AGREES = 0.12;

    /** A law is asked this far beyond its points [1]. */
    private static final double BEYOND = 1.5;

    private UnconfirmedDwells() {}

    /**
     * Finds them.
     *
     * @param regimes as found with them
     * @return ids of the dwells of regimes that hold nothing else
     */
    static List<String> of(List<RatePoint> points, Optional<Regimes> regimes) {
        Set<String> dwells = points.stream()
                .filter(point -> point.source() == RatePoint.Source.DWELL)
                .map(RatePoint::id)
                .collect(Collectors.toSet());
        return regimes.stream()
                .flatMap(found -> Stream.concat(
                        found.selected() > 1 ? found.regimes().stream().map(Regime::ids) : Stream.empty(),
                        found.unsettled().map(UnsettledRegime::ids).stream()))
                .filter(ids -> dwells.containsAll(ids))
                .flatMap(List::stream)
                .distinct()
                .toList();
    }

    /**
     * Points of firings of which web was gone before the main rise. If the rate before it, taken over the whole surface, is
     * the one that the other firings have there, the whole surface burned, and the firing counts like any other; if a part
     * of the surface had burned, the rate would be low by that part.
     *
     * @param points of the formulation, those of such firings set aside
     * @return the points, in the same order, those that are confirmed no longer set aside
     */
    static List<RatePoint> judged(List<RatePoint> points, FormulationResult result) {
        Set<String> confirmed = points.stream()
                .filter(point -> point.source() == RatePoint.Source.DWELL && point.burnedBefore())
                .filter(point ->
                        result.regimes().filter(found -> agrees(point, found)).isPresent())
                .map(RatePoint::cluster)
                .collect(Collectors.toSet());
        return points.stream()
                .map(point -> point.burnedBefore() && confirmed.contains(point.cluster()) ? point.confirmed() : point)
                .toList();
    }

    private static boolean agrees(RatePoint point, Regimes regimes) {
        double pressure = point.pressures().powerMean(1);
        return IntStream.range(0, regimes.selected())
                .filter(j -> (j == 0 || pressure >= end(regimes.breaks().get(j - 1), Interval.Estimated::low))
                        && (j == regimes.selected() - 1
                                || pressure <= end(regimes.breaks().get(j), Interval.Estimated::high)))
                .mapToObj(j -> regimes.laws().get(j))
                .anyMatch(law -> law.pressureLow() / BEYOND <= pressure
                        && pressure <= law.pressureHigh() * BEYOND
                        && Math.abs(Math.log(point.rate() / law.rate(pressure))) < AGREES);
    }

    private static double end(Break at, ToDoubleFunction<Interval.Estimated> which) {
        return at.interval().estimated().map(which::applyAsDouble).orElse(at.pressure());
    }

    /**
     * The same points with some of them not to be fitted.
     *
     * @param ids    of those that are set aside
     * @return the points, in the same order
     */
    static List<RatePoint> setAside(List<RatePoint> points, List<String> ids) {
        return points.stream()
                .map(point -> ids.contains(point.id())
                        ? point.withSetAside(
                                "a burn at low pressure before the main rise; no firing and no strand confirms its low rate, so"
                                        + " perhaps only a part of the surface burned")
                        : point)
                .toList();
    }
}
