package io.burnlaw.characterize;

import io.burnlaw.reduction.RatePoint;
import io.burnlaw.regime.Regime;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.UnsettledRegime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Dwells that a regime would rest on alone. The rate in a dwell is as right as the belief that the whole surface was
 * alight in it; so a regime of its own needs a firing or a strand besides.
 */
final class UnconfirmedDwells {

    private UnconfirmedDwells() {}

    /**
     * Finds them.
     *
     * @param points  of the formulation
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
     * The same points with some of them not to be fitted.
     *
     * @param points of the formulation
     * @param ids    of those that are set aside
     * @return the points, in the same order
     */
    static List<RatePoint> setAside(List<RatePoint> points, List<String> ids) {
        return points.stream()
                .map(point -> ids.contains(point.id())
                        ? point.withSetAside(
                                "a dwell whose low rate no firing and no strand confirms: perhaps only a part"
                                        + " of the surface burned")
                        : point)
                .toList();
    }
}
