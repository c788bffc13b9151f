package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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

    /** Settings for records that hold a time. */
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

    /** The same settings where somebody says what the pressure counts from. */
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
}
