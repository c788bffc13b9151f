package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign.DirectPoint;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatePoint;
import java.util.List;
import java.util.Optional;

/** Points that were measured directly, as points of the law. */
final class DirectPoints {

    private DirectPoints() {}

    /** A point like any other; an uncertainty that nobody stated is left to the scatter about the law. */
    static RatePoint of(DirectPoint point) {
        return new RatePoint(
                point.id(),
                point.id(),
                Optional.empty(),
                point.formulation(),
                RatePoint.Source.POINT,
                PressureDistribution.constant(point.pressure().value()),
                point.pressure().stdOr(0),
                point.rate().value(),
                point.rate().stdOr(0),
                0,
                point.temperature(),
                "stated",
                false,
                point.setAside(),
                List.of(),
                new PressureError(point.pressure().stdOr(0) / point.pressure().value(), 0, 0));
    }
}
