package io.burnlaw.publish;

import io.burnlaw.closure.PredictedFiring;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.ClosureRow;
import io.burnlaw.report.document.Quantity;

/** A closure as it stands in the document. */
public final class ClosureDocument {

    private ClosureDocument() {}

    /**
     * The closure of one formulation.
     *
     * @param closure firings beside their predictions
     * @return the same in the document's words
     */
    public static Closure of(io.burnlaw.closure.Closure closure) {
        return new Closure(
                closure.firings().stream().map(ClosureDocument::row).toList(),
                closure.medianMaxPressureError(),
                closure.medianMeanPressureError(),
                closure.medianBurnTimeError(),
                closure.good(),
                closure.notPredicted().isEmpty()
                        ? closure.sentence()
                        : closure.sentence() + " Not predicted: " + String.join("; ", closure.notPredicted()) + ".");
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
