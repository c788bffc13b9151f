package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where texts are read by name and what is wrong is said of the name: a mapping of a YAML file, or a row of a table. */
interface Place {

    /** {@return as written; empty where nothing is} */
    Optional<String> text(String name);

    void wrong(String name, String what, String found, String expected, String mend);

    /** Of what is written there. */
    default void wrong(String name, String what, String expected, String mend) {
        wrong(name, what, text(name).orElse(""), expected, mend);
    }

    /** The value where it is above zero and above its own uncertainty. */
    default Optional<Measured> above(String name, Optional<Measured> measured, String mend) {
        if (measured.isPresent() && !(measured.get().value() > 0)) {
            wrong(name, "the value is not above zero", "a value above zero", mend);
            return Optional.empty();
        }
        if (measured.filter(Measured::isVague).isPresent()) {
            wrong(
                    name,
                    "the uncertainty is larger than the value",
                    "a standard uncertainty, in the unit of the value",
                    "correct the number after \u00b1");
            return Optional.empty();
        }
        return measured;
    }

    /** {@return whether the value is within the bounds; where not, it is said} */
    default boolean plausible(String name, Plausible bounds, Measured value, String mend) {
        Optional<String> doubt = bounds.doubt(value.value());
        doubt.ifPresent(what -> wrong(name, what, bounds.words(), mend));
        return doubt.isEmpty();
    }

    default Optional<SensorClass> sensor() {
        return text("pressure_uncertainty").flatMap(text -> {
            SensorClass.Reading reading = SensorClass.read(text);
            reading.misread()
                    .ifPresent(misread -> wrong(
                            "pressure_uncertainty",
                            misread.what(),
                            "a pressure, or a share of one",
                            "write   0.5 % of 1000 psi"));
            return reading.sensor();
        });
    }

    static OptionalDouble value(Optional<Measured> measured) {
        return measured.stream().mapToDouble(Measured::value).findFirst();
    }
}
