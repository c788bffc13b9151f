package io.burnlaw.campaign;

import io.burnlaw.campaign.WrittenUnit.WrittenPressure;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How the traces are to be read; a firing's own columns override the campaign's block.
 *
 * @param time                heading of the time column, with its unit in brackets; found by itself where empty
 * @param interval            between the samples [s]: for records without a time; empty where it was not stated
 * @param pressure            heading of the pressure column; found by itself where empty
 * @param thrust              heading of the thrust column; found by itself where empty
 * @param pressureKind        what the pressure column counts from; where it is empty the column's unit must say it, or the
 *                            record is refused
 * @param calibration         raw reading to pressure, in rising order of the reading; empty where the column is a
 *                            pressure already
 * @param pressureUncertainty standard uncertainty of the sensor's scale and linearity [Pa]
 * @param fullScale           the sensor's highest pressure [Pa], where it was stated
 */
public record TraceSettings(
        Optional<String> time,
        OptionalDouble interval,
        Optional<String> pressure,
        Optional<String> thrust,
        Optional<PressureKind> pressureKind,
        List<CalibrationPoint> calibration,
        OptionalDouble pressureUncertainty,
        OptionalDouble fullScale) {

    public TraceSettings {
        calibration = List.copyOf(calibration);
    }

    /**
     * One point of a calibration.
     *
     * @param reading  what the logger wrote, in the unit of the calibration's own column
     * @param unit     unit of the reading as written, such as V
     * @param pressure the pressure that belongs to it [Pa], of the settings' pressure kind
     */
    public record CalibrationPoint(Measured reading, String unit, double pressure) {}

    /**
     * Settings for records that hold a time.
     *
     * @param time                as above
     * @param pressure            as above
     * @param thrust              as above
     * @param pressureKind        as above
     * @param calibration         as above
     * @param pressureUncertainty as above
     * @param fullScale           as above
     */
    public TraceSettings(
            Optional<String> time,
            Optional<String> pressure,
            Optional<String> thrust,
            Optional<PressureKind> pressureKind,
            List<CalibrationPoint> calibration,
            OptionalDouble pressureUncertainty,
            OptionalDouble fullScale) {
        this(time, OptionalDouble.empty(), pressure, thrust, pressureKind, calibration, pressureUncertainty, fullScale);
    }

    /**
     * The same settings where somebody says what the pressure counts from.
     *
     * @param kind of the pressure
     * @return the settings
     */
    public TraceSettings of(PressureKind kind) {
        return new TraceSettings(
                time, interval, pressure, thrust, Optional.of(kind), calibration, pressureUncertainty, fullScale);
    }

    /** {@return settings that leave everything to be found} */
    public static TraceSettings unstated() {
        return new TraceSettings(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** The time from one sample to the next, written as a rate or as a time: {@code 2 kHz}, {@code 0.5 ms}. */
    static final class SamplingInterval {

        private SamplingInterval() {}

        /**
         * The interval, or what is wrong.
         *
         * @param interval [s]
         * @param fault    in a few words
         */
        record Reading(OptionalDouble interval, Optional<String> fault) {

            static final String EXPECTED = "a rate such as 2 kHz, or the time between two samples such as 0.5 ms";
        }

        static Reading read(String text) {
            OptionalDouble rate = value(text, Dimension.FREQUENCY);
            OptionalDouble interval =
                    rate.isPresent() ? OptionalDouble.of(1 / rate.getAsDouble()) : value(text, Dimension.TIME);
            if (interval.isEmpty()) {
                return wrong("this is neither a sampling rate nor an interval");
            }
            return Plausible.SAMPLING_INTERVAL
                    .doubt(interval.getAsDouble())
                    .map(SamplingInterval::wrong)
                    .orElseGet(() -> new Reading(interval, Optional.empty()));
        }

        private static OptionalDouble value(String text, Dimension dimension) {
            return Quantity.read(text, dimension)
                    .match(read -> OptionalDouble.of(read.quantity().si().value()), misread -> OptionalDouble.empty());
        }

        private static Reading wrong(String what) {
            return new Reading(OptionalDouble.empty(), Optional.of(what));
        }
    }

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
            Reading range =
                    part(share.group(2), Dimension.PRESSURE, value -> new SensorClass(0, OptionalDouble.of(value)));
            if (range.sensor().isEmpty()) {
                return range;
            }
            double fullScale = range.sensor().get().fullScale().orElseThrow();
            return part(
                    share.group(1),
                    Dimension.FRACTION,
                    value -> new SensorClass(value * fullScale, OptionalDouble.of(fullScale)));
        }

        private static Reading part(
                String text, Dimension dimension, java.util.function.DoubleFunction<SensorClass> made) {
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
}
