package io.burnlaw.characterize;

import io.burnlaw.reduction.point.RatePoint;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A rate-pressure point and what became of it.
 *
 * @param point    as reduced
 * @param batch    the casting that it came from
 * @param pressure rate-averaged [Pa, absolute]
 * @param rate     as fitted: referred to the reference temperature where two temperatures were fired [m/s]
 * @param residual studentized [1], about the law of its regime where there are several, else about the single law;
 *                 empty where it was not fitted
 * @param segment  number of its regime from 1, where there are several
 */
public record PointResult(
        RatePoint point,
        Optional<String> batch,
        double pressure,
        double rate,
        OptionalDouble residual,
        OptionalInt segment) {

    /** {@return whether it was fitted} */
    public boolean used() {
        return point.setAside().isEmpty();
    }
}
