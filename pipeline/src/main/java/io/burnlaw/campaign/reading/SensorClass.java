package io.burnlaw.campaign.reading;

import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How well a pressure sensor is known: {@code 0.5 % of 1000 psi}, or {@code 5 psi}. Both are standard
 * uncertainties.
 *
 * @param std       standard uncertainty of scale and linearity [Pa]
 * @param fullScale highest pressure of the sensor [Pa], where it was written
 */
record SensorClass(double std, OptionalDouble fullScale) {

    private static final Pattern SHARE = Pattern.compile("(.+?)\\s+of\\s+(.+)");

    /** Where the text is no sensor class, the mend and the expectation are those of the part that is wrong. */
    record Reading(Optional<SensorClass> sensor, Optional<QuantityReading.Misread> misread) {}

    static Reading read(String text) {
        Matcher share = SHARE.matcher(text.strip());
        if (!share.matches()) {
            return part(text, Dimension.PRESSURE, value -> new SensorClass(value, OptionalDouble.empty()));
        }
        Reading range = part(share.group(2), Dimension.PRESSURE, value -> new SensorClass(0, OptionalDouble.of(value)));
        if (range.sensor().isEmpty()) {
            return range;
        }
        double fullScale = range.sensor().get().fullScale().orElseThrow();
        return part(
                share.group(1),
                Dimension.FRACTION,
                value -> new SensorClass(value * fullScale, OptionalDouble.of(fullScale)));
    }

    private static Reading part(String text, Dimension dimension, DoubleFunction<SensorClass> made) {
        String plain =
                dimension == Dimension.PRESSURE ? WrittenPressure.of(text).plain() : text;
        return Quantity.read(plain, dimension)
                .match(
                        read -> {
                            double value = read.quantity().si().value();
                            return value > 0
                                    ? new Reading(Optional.of(made.apply(value)), Optional.empty())
                                    : wrong(new QuantityReading.Misread(
                                            "the value is not above zero", "a value above zero", "correct it"));
                        },
                        SensorClass::wrong);
    }

    private static Reading wrong(QuantityReading.Misread misread) {
        return new Reading(Optional.empty(), Optional.of(misread));
    }
}
