package io.burnlaw.trace.reading;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * From the readings of the file to absolute pressure: the unit or the calibration, then the ambient pressure where the
 * sensor reads gauge. A calibration is piecewise linear; beyond its ends the last piece goes on, and that is told.
 */
final class PressureScale {

    /** A reading this many times the end of the range was written in another unit [1]: common practice, no source. */
    private static final double ANOTHER_UNIT = 5;

    /** Readings that leave the range by no more than this share of it are its end with noise on it [1]. */
    private static final double MARGIN = 0.02;

    private final Unit unit;
    private final double[] readings;
    private final double[] pressures;
    private final double add;
    private final Optional<Double> fullScale;

    PressureScale(Unit unit, TraceSettings settings, PressureKind kind, double ambient) {
        this.unit = unit;
        List<TraceSettings.CalibrationPoint> points = settings.calibration();
        this.readings = points.stream()
                .mapToDouble(point -> Unit.spelled(point.unit())
                        .orElseThrow()
                        .toSi(point.reading().value()))
                .toArray();
        this.pressures = points.stream()
                .mapToDouble(TraceSettings.CalibrationPoint::pressure)
                .toArray();
        this.add = kind == PressureKind.GAUGE ? ambient : 0;
        this.fullScale = settings.fullScale().isPresent()
                ? Optional.of(settings.fullScale().getAsDouble())
                : Optional.empty();
    }

    /** Replaces readings [unit of the file] by pressures [Pa, absolute]. */
    void apply(double[] values) {
        for (int i = 0; i < values.length; i++) {
            double si = unit.toSi(values[i]);
            values[i] = (readings.length == 0 ? si : curve(si)) + add;
        }
    }

    private double curve(double reading) {
        int piece = 1;
        while (piece < readings.length - 1 && reading > readings[piece]) {
            piece++;
        }
        double share = (reading - readings[piece - 1]) / (readings[piece] - readings[piece - 1]);
        return pressures[piece - 1] + share * (pressures[piece] - pressures[piece - 1]);
    }

    /** Tells where the record [s, Pa absolute] leaves the calibration or the sensor's range. */
    Optional<Finding> beyond(double[] time, double[] absolute) {
        if (readings.length == 0 && fullScale.isEmpty()) {
            return Optional.empty();
        }
        double low = readings.length == 0 ? 0 : Math.min(pressures[0], pressures[pressures.length - 1]);
        double high = readings.length == 0
                ? fullScale.orElseThrow()
                : Math.max(pressures[0], pressures[pressures.length - 1]);
        double margin = MARGIN * (high - low);
        int outside = 0;
        int worst = -1;
        for (int i = 0; i < absolute.length; i++) {
            double pressure = absolute[i] - add;
            if (pressure > high + margin || pressure < low - margin) {
                outside++;
                boolean further = worst < 0
                        || Math.abs(pressure - (low + high) / 2) > Math.abs(absolute[worst] - add - (low + high) / 2);
                worst = further ? i : worst;
            }
        }
        if (outside == 0) {
            return Optional.empty();
        }
        return Optional.of(Finding.at(
                FindingCode.BEYOND_RANGE,
                "%d samples lie outside of the %s (%s to %s MPa); the furthest reads %s MPa at %s s.%s"
                        .formatted(
                                outside,
                                readings.length == 0 ? "sensor's range" : "calibration",
                                NumberFormat.plain(low / 1e6, 4),
                                NumberFormat.plain(high / 1e6, 4),
                                NumberFormat.plain(Math.max(-1e12, Math.min(1e12, (absolute[worst] - add) / 1e6)), 4),
                                NumberFormat.plain(time[worst], 4),
                                absolute[worst] - add > ANOTHER_UNIT * high
                                        ? " No sensor reads that far beyond its range: check the unit of the column."
                                        : ""),
                time[worst]));
    }
}
