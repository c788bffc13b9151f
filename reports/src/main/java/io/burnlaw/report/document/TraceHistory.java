package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A record thinned to what a picture can show.
 *
 * @param time s
 * @param pressure MPa, absolute
 * @param thrust N
 * @param simulatedTime of the closure, s
 * @param simulatedPressure of the closure, MPa, absolute
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record TraceHistory(
        List<Double> time,
        List<Double> pressure,
        @Nullable List<Double> thrust,
        @Nullable List<Double> simulatedTime,
        @Nullable List<Double> simulatedPressure) {

    public TraceHistory {
        time = List.copyOf(time);
        pressure = List.copyOf(pressure);
        thrust = thrust == null ? null : List.copyOf(thrust);
        simulatedTime = simulatedTime == null ? null : List.copyOf(simulatedTime);
        simulatedPressure = simulatedPressure == null ? null : List.copyOf(simulatedPressure);
    }
}
