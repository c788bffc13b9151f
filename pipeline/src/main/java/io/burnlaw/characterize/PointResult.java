package io.burnlaw.characterize;

import io.burnlaw.ratelaw.Residual;
import io.burnlaw.reduction.RatePoint;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A rate-pressure point and what became of it.
 *
 * @param point    as reduced
 * @param pressure rate-averaged [Pa, absolute]
 * @param rate     as fitted: referred to the reference temperature where two temperatures were fired [m/s]
 * @param residual about the single law, where it was fitted
 * @param segment  number of its regime from 1, where there are several
 */
public record PointResult(
        RatePoint point, double pressure, double rate, Optional<Residual> residual, OptionalInt segment) {

    /** {@return whether it was fitted} */
    public boolean used() {
        return point.setAside().isEmpty();
    }
}
