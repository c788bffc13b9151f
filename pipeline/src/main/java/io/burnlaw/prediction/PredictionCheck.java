package io.burnlaw.prediction;

import io.burnlaw.finding.Finding;
import io.burnlaw.prediction.LeaveOneOut.MeasuredFiring;
import io.burnlaw.reduction.point.TraceHistory;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How well the law predicts: each firing predicted by a law fitted without it, or why none could be predicted. */
public sealed interface PredictionCheck {

    /** {@return in words} */
    String sentence();

    /**
     * At least one firing was predicted.
     *
     * @param firings                 in the order in which they were given
     * @param notPredicted            clauses on firings that could not be predicted
     * @param medianMaxPressureError  median of the relative errors without sign [1]
     * @param medianMeanPressureError median of the relative errors without sign [1]
     * @param medianBurnTimeError     median of the relative errors without sign [1]
     * @param good                    whether a designer can rely on it
     * @param finding                 where the closure is poor
     */
    record Predicted(
            List<PredictedFiring> firings,
            List<String> notPredicted,
            double medianMaxPressureError,
            double medianMeanPressureError,
            double medianBurnTimeError,
            boolean good,
            String sentence,
            Optional<Finding> finding)
            implements PredictionCheck {
        public Predicted {
            firings = List.copyOf(firings);
            notPredicted = List.copyOf(notPredicted);
            if (firings.isEmpty()) {
                throw new IllegalArgumentException("a closure without a firing");
            }
        }
    }

    /** No firing could be predicted. */
    record NotPredicted(String sentence) implements PredictionCheck {}

    /**
     * Answers for both cases.
     *
     * @param predicted the answer where firings were predicted
     * @param none      the answer where none was
     */
    default <T> T match(Function<Predicted, T> predicted, Function<NotPredicted, T> none) {
        return this instanceof Predicted p ? predicted.apply(p) : none.apply((NotPredicted) this);
    }

    /**
     * A firing with its prediction.
     *
     * @param maxPressure  predicted [Pa, absolute]
     * @param meanPressure predicted, over the burn time [Pa, absolute]
     * @param burnTime     predicted [s]
     * @param record       predicted, on the time axis of the trace
     */
    public record PredictedFiring(
            MeasuredFiring measured, double maxPressure, double meanPressure, double burnTime, TraceHistory record) {

        /** {@return predicted over measured, less 1 [1]} */
        public double maxPressureError() {
            return maxPressure / measured.maxPressure() - 1;
        }

        /** {@return predicted over measured, less 1 [1]} */
        public double meanPressureError() {
            return meanPressure / measured.meanPressure() - 1;
        }

        /** {@return predicted over measured, less 1 [1]} */
        public double burnTimeError() {
            return burnTime / measured.burnTime() - 1;
        }
    }
}
