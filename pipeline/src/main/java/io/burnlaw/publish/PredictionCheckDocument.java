package io.burnlaw.publish;

import io.burnlaw.prediction.PredictionCheck.PredictedFiring;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Quantity;
import java.util.List;

/** A closure as it stands in the document. */
public final class PredictionCheckDocument {

    private PredictionCheckDocument() {}

    /**
     * The closure of one formulation.
     *
     * @param closure firings beside their predictions, or why there are none
     * @return the same in the document's words
     */
    public static Closure of(io.burnlaw.prediction.PredictionCheck closure) {
        return closure.match(
                predicted -> new Closure(
                        predicted.firings().stream()
                                .map(PredictionCheckDocument::row)
                                .toList(),
                        predicted.medianMaxPressureError(),
                        predicted.medianMeanPressureError(),
                        predicted.medianBurnTimeError(),
                        predicted.good(),
                        predicted.notPredicted().isEmpty()
                                ? predicted.sentence()
                                : predicted.sentence() + " Not predicted: "
                                        + String.join("; ", predicted.notPredicted()) + "."),
                none -> new Closure(List.of(), null, null, null, null, none.sentence()));
    }

    private static ClosureRow row(PredictedFiring firing) {
        return new ClosureRow(
                firing.measured().id(),
                pressure(firing.measured().maxPressure()),
                pressure(firing.maxPressure()),
                pressure(firing.measured().meanPressure()),
                pressure(firing.meanPressure()),
                time(firing.measured().burnTime()),
                time(firing.burnTime()));
    }

    private static Quantity pressure(double pascal) {
        return Quantity.of(Unit.MEGAPASCAL.fromSi(pascal), Unit.MEGAPASCAL.ucum());
    }

    private static Quantity time(double seconds) {
        return Quantity.of(seconds, Unit.SECOND.ucum());
    }
}
