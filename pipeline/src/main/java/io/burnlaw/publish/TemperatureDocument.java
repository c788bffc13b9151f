package io.burnlaw.publish;

import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.TemperatureResult;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.TemperatureSensitivity;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The temperature sensitivity as it stands in the document. */
final class TemperatureDocument {

    /** UCUM code; the same in kelvin and in degrees Celsius, since a difference is meant. */
    private static final String PER_KELVIN = "/K";

    private TemperatureDocument() {}

    /**
     * The sensitivity.
     *
     * @param sensitivity as estimated
     * @return the same in the document's units
     */
    static TemperatureSensitivity of(TemperatureResult.Estimated sensitivity) {
        return new TemperatureSensitivity(
                perKelvin(sensitivity.sigmaP(), sensitivity.sigmaPInterval(), sensitivity.sigmaPStd()),
                perKelvin(sensitivity.piK(), sensitivity.piKInterval(), null),
                PublishedQuantities.of(sensitivity.referenceTemperature(), Unit.DEGREE_CELSIUS),
                sensitivity.sentence());
    }

    private static Quantity perKelvin(double value, Interval interval, @Nullable Double std) {
        Optional<Interval.Estimated> estimated = interval.estimated();
        return new Quantity(
                value,
                PER_KELVIN,
                estimated.map(Interval.Estimated::low).orElse(null),
                estimated.map(Interval.Estimated::high).orElse(null),
                estimated.map(Interval.Estimated::level).orElse(null),
                std);
    }
}
