package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * The law and its bands at one pressure.
 *
 * @param pressure MPa, absolute
 * @param rate mm/s
 * @param confidenceLow of the mean rate, mm/s
 * @param confidenceHigh of the mean rate, mm/s
 * @param predictionLow of the next firing, mm/s
 * @param predictionHigh of the next firing, mm/s
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record CurvePoint(
        double pressure,
        double rate,
        @Nullable Double confidenceLow,
        @Nullable Double confidenceHigh,
        @Nullable Double predictionLow,
        @Nullable Double predictionHigh) {}
