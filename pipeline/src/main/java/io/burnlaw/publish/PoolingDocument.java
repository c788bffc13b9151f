package io.burnlaw.publish;

import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.WithinBetween;
import java.util.OptionalDouble;

/** The two ways to the exponent as they stand in the document. */
final class PoolingDocument {

    private PoolingDocument() {}

    /**
     * Both exponents.
     *
     * @param pooled as found
     * @return the same for the document
     */
    static WithinBetween of(Pooling.Pooled pooled) {
        return new WithinBetween(
                exponent(pooled.within()),
                exponent(pooled.between()),
                pooled.firingScatter(),
                pooled.pValue(),
                pooled.sentence());
    }

    private static Quantity exponent(Pooling.Exponent exponent) {
        return PublishedQuantities.of(
                exponent.value(), exponent.interval(), OptionalDouble.of(exponent.std()), Unit.ONE);
    }
}
