package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;

/**
 * How well the law gives back the traces.
 *
 * @param rows one a firing
 * @param medianMaxPressureError median of the relative errors without sign [1]
 * @param medianMeanPressureError median of the relative errors without sign [1]
 * @param medianBurnTimeError median of the relative errors without sign [1]
 * @param good whether a designer can rely on it
 * @param sentence in words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Closure(
        List<ClosureRow> rows,
        double medianMaxPressureError,
        double medianMeanPressureError,
        double medianBurnTimeError,
        boolean good,
        String sentence) {

    public Closure {
        rows = List.copyOf(rows);
    }
}
