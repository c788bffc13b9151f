package io.burnlaw.publish;

import io.burnlaw.characterize.PointResult;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.report.document.Point;
import java.util.Locale;

/** A rate-pressure point as it stands in the document. */
final class PointDocument {

    private PointDocument() {}

    /**
     * One point.
     *
     * @param result the point and what became of it
     * @return the point
     */
    static Point of(PointResult result) {
        RatePoint point = result.point();
        return new Point(
                point.id(),
                point.cluster(),
                point.firing().orElse(null),
                result.batch().orElse(null),
                point.source().name().toLowerCase(Locale.ROOT),
                PublishedQuantities.of(result.pressure(), point.pressureStd(), Unit.MEGAPASCAL),
                PublishedQuantities.of(point.pressures().powerMean(1), point.pressureStd(), Unit.MEGAPASCAL),
                PublishedQuantities.of(result.rate(), point.rateStd(), Unit.MILLIMETRE_PER_SECOND),
                PublishedQuantities.ofOptional(point.temperature(), Unit.DEGREE_CELSIUS),
                point.method(),
                point.lowerGrade(),
                result.used(),
                point.setAside().orElse(null),
                result.residual().isPresent() ? (Double) result.residual().getAsDouble() : null,
                result.segment().isPresent() ? (Integer) result.segment().getAsInt() : null);
    }
}
