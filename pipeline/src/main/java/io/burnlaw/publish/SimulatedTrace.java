package io.burnlaw.publish;

import java.util.List;

/**
 * What a law gives back of a trace.
 *
 * @param time     [s, on the axis of the record]
 * @param pressure [Pa, absolute], as many as times
 */
record SimulatedTrace(List<Double> time, List<Double> pressure) {
    SimulatedTrace {
        time = List.copyOf(time);
        pressure = List.copyOf(pressure);
    }
}
