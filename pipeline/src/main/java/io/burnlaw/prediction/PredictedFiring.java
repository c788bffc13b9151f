package io.burnlaw.prediction;

import io.burnlaw.reduction.point.TraceHistory;

/**
 * A firing beside its prediction.
 *
 * @param measured     as it was
 * @param leftOut      whether the law was really made without it; false where it had no point in the law
 * @param maxPressure  predicted [Pa, absolute]
 * @param meanPressure predicted, over the burn time [Pa, absolute]
 * @param burnTime     predicted [s]
 * @param record       predicted, on the time axis of the trace
 */
public record PredictedFiring(
        MeasuredFiring measured,
        boolean leftOut,
        double maxPressure,
        double meanPressure,
        double burnTime,
        TraceHistory record) {

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
