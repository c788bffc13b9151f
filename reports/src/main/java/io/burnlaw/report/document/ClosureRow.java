package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * One firing predicted from a law that was made without it.
 *
 * @param firing id
 * @param maxPressureMeasured absolute
 * @param maxPressurePredicted absolute
 * @param meanPressureMeasured absolute
 * @param meanPressurePredicted absolute
 * @param burnTimeMeasured s
 * @param burnTimePredicted s
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record ClosureRow(
        String firing,
        Quantity maxPressureMeasured,
        Quantity maxPressurePredicted,
        Quantity meanPressureMeasured,
        Quantity meanPressurePredicted,
        Quantity burnTimeMeasured,
        Quantity burnTimePredicted) {}
