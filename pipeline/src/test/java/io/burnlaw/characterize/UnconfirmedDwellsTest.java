package io.burnlaw.characterize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.RegimeOptions;
import io.burnlaw.regime.RegimeSearch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class UnconfirmedDwellsTest {

    /** Nine firings at 1 MPa to 6 MPa on one law, and points a third as fast at 0.3 MPa to 0.6 MPa. */
    private static List<RatePoint> points(RatePoint.Source firstSlow, RatePoint.Source otherSlow) {
        SplittableRandom random = new SplittableRandom(4);
        List<RatePoint> points = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double pressure = 1e6 * Math.pow(6, i / 8.0);
            points.add(point("fast" + i, RatePoint.Source.FIRING, pressure, 6e-3, random));
        }
        for (int i = 0; i < 4; i++) {
            double pressure = 0.3e6 * Math.pow(2, i / 3.0);
            points.add(point("slow" + i, i == 0 ? firstSlow : otherSlow, pressure, 2e-3, random));
        }
        return points;
    }

    private static RatePoint point(
            String id, RatePoint.Source source, double pressure, double coefficient, SplittableRandom random) {
        double rate = coefficient * Math.pow(pressure / 1e6, 0.35) * (1 + 0.01 * random.nextGaussian());
        return new RatePoint(
                id,
                id,
                Optional.of(id),
                "p",
                source,
                PressureDistribution.of(new double[] {pressure}, new double[] {1}),
                0.005 * pressure,
                rate,
                0.01 * rate,
                0,
                OptionalDouble.empty(),
                "mass-balance",
                false,
                Optional.empty(),
                List.of(),
                PressureError.NONE);
    }

    private static List<String> unconfirmed(List<RatePoint> points) {
        List<FitPoint> fitted = points.stream()
                .map(point -> new FitPoint(
                        point.id(),
                        point.cluster(),
                        point.pressures().powerMean(1),
                        point.pressureStd(),
                        point.rate(),
                        point.rateStd(),
                        0))
                .toList();
        return UnconfirmedDwells.of(points, Optional.of(RegimeSearch.search(fitted, RegimeOptions.defaults(3))));
    }

    @Test
    void aSlowRegimeOfDwellsAloneIsNotClaimed() {
        List<RatePoint> points = points(RatePoint.Source.DWELL, RatePoint.Source.DWELL);
        List<String> ids = unconfirmed(points);
        assertEquals(List.of("slow0", "slow1", "slow2", "slow3"), ids);
        List<RatePoint> left = UnconfirmedDwells.setAside(points, ids).stream()
                .filter(point -> point.setAside().isEmpty())
                .toList();
        assertTrue(left.stream().allMatch(point -> point.id().startsWith("fast")) && left.size() == 9);
    }

    @Test
    void aFiringAmongThemConfirmsTheRegime() {
        assertEquals(List.of(), unconfirmed(points(RatePoint.Source.FIRING, RatePoint.Source.DWELL)));
    }
}
