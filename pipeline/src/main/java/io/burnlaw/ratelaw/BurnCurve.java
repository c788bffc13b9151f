package io.burnlaw.ratelaw;

import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.List;

/**
 * Rate and pressure along one burn. Its samples are not independent: it counts as one firing.
 *
 * @param firing id
 * @param along  the samples that can be believed; pressure and rate above zero
 */
public record BurnCurve(String firing, List<InstantaneousRate> along) {

    public BurnCurve {
        along = List.copyOf(along);
        for (InstantaneousRate each : along) {
            if (!(each.pressure() > 0 && each.rate() > 0)) {
                throw new IllegalArgumentException(
                        "firing " + firing + ": " + each.rate() + " m/s at " + each.pressure() + " Pa");
            }
        }
    }

    /**
     * The part of the burn at some pressures.
     *
     * @param low  [Pa, absolute]
     * @param high [Pa, absolute]
     * @return the samples from low to high
     */
    public BurnCurve within(double low, double high) {
        return new BurnCurve(
                firing,
                along.stream()
                        .filter(each -> each.pressure() >= low && each.pressure() <= high)
                        .toList());
    }
}
