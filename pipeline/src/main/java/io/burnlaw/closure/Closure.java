package io.burnlaw.closure;

import io.burnlaw.finding.Finding;
import java.util.List;
import java.util.Optional;

/**
 * How well a law serves a designer: each firing predicted from a law made without it.
 *
 * @param firings                 in the order in which they were given
 * @param notPredicted            sentences on firings that could not be predicted
 * @param medianMaxPressureError  median of the relative errors without sign [1]
 * @param medianMeanPressureError median of the relative errors without sign [1]
 * @param medianBurnTimeError     median of the relative errors without sign [1]
 * @param maxPressureBias         median of the relative errors with sign [1]
 * @param expectedError           median error of the peak that the law's own scatter would give [1]
 * @param good                    whether a designer can rely on it
 * @param sentence                in words
 * @param finding                 where the closure is poor
 */
public record Closure(
        List<PredictedFiring> firings,
        List<String> notPredicted,
        double medianMaxPressureError,
        double medianMeanPressureError,
        double medianBurnTimeError,
        double maxPressureBias,
        double expectedError,
        boolean good,
        String sentence,
        Optional<Finding> finding) {

    public Closure {
        firings = List.copyOf(firings);
        notPredicted = List.copyOf(notPredicted);
    }
}
