package io.burnlaw.ratelaw;

/**
 * A rate-pressure point whose propellant had a known temperature.
 *
 * @param point       the point
 * @param temperature of the propellant [K], above zero
 */
public record PointAtTemperature(FitPoint point, double temperature) {

    public PointAtTemperature {
        if (!(temperature > 0)) {
            throw new IllegalArgumentException("point " + point.id() + " at " + temperature + " K");
        }
    }
}
