package io.burnlaw.report.document;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How well the law reproduces the traces.
 *
 * @param rows one a firing that was predicted
 * @param medianMaxPressureError median of the relative errors without sign [1]; absent without rows
 * @param medianMeanPressureError median of the relative errors without sign [1]; absent without rows
 * @param medianBurnTimeError median of the relative errors without sign [1]; absent without rows
 * @param good whether a designer can rely on it; absent without rows
 * @param sentence in words; without rows, why there are none
 */
public record Closure(
        List<ClosureRow> rows,
        @Nullable Double medianMaxPressureError,
        @Nullable Double medianMeanPressureError,
        @Nullable Double medianBurnTimeError,
        @Nullable Boolean good,
        String sentence) {

    public Closure {
        rows = List.copyOf(rows);
    }

    /**
     * One firing, predicted by a law that was fitted without it.
     *
     * @param firing id
     * @param maxPressureMeasured absolute
     * @param maxPressurePredicted absolute
     * @param meanPressureMeasured absolute
     * @param meanPressurePredicted absolute
     * @param burnTimeMeasured s
     * @param burnTimePredicted s
     */
    public record ClosureRow(
            String firing,
            Quantity maxPressureMeasured,
            Quantity maxPressurePredicted,
            Quantity meanPressureMeasured,
            Quantity meanPressurePredicted,
            Quantity burnTimeMeasured,
            Quantity burnTimePredicted) {}
}
