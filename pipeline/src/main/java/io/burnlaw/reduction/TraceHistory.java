package io.burnlaw.reduction;

import java.util.List;
import java.util.Optional;

/**
 * A record thinned to what a picture can show, extremes kept.
 *
 * @param time     [s]
 * @param pressure [Pa, absolute], as many as times; zero offset taken off
 * @param thrust   [N], as many as times, where it was recorded
 */
public record TraceHistory(List<Double> time, List<Double> pressure, Optional<List<Double>> thrust) {
    public TraceHistory {
        time = List.copyOf(time);
        pressure = List.copyOf(pressure);
        thrust = thrust.map(List::copyOf);
    }
}
