package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.TraceSettings.CalibrationPoint;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import io.burnlaw.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Raw reading to pressure, as written: pairs such as {@code 0.48 V: 0 psi}. */
final class Calibration {

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([^a-zA-Zµμ%{]+(?:[eE][+-]?\\d+)?)\\s*(.*)");

    private Calibration() {}

    /** One pair as written. */
    record Pair(String reading, String pressure) {}

    /** What is wrong with it: the text, and what to do. */
    record Fault(String found, String what, String expected, String mend) {}

    /** The points in rising order of the reading, or what is wrong. */
    record Reading(List<CalibrationPoint> points, Optional<Fault> fault) {}

    /** Takes a cell such as {@code 0.48 V: 0 psi; 4.52 V: 1000 psi} apart. */
    static List<Pair> pairs(String cell) {
        List<Pair> pairs = new ArrayList<>();
        for (String pair : cell.strip().replaceAll("^\\{|}$", "").split(";")) {
            int colon = pair.indexOf(':');
            pairs.add(new Pair(
                    pair.substring(0, Math.max(0, colon)).strip(),
                    pair.substring(colon + 1).strip()));
        }
        return pairs;
    }

    static Reading read(List<Pair> pairs) {
        List<CalibrationPoint> points = new ArrayList<>();
        Optional<Unit> common = Optional.empty();
        for (Pair pair : pairs) {
            Optional<Unit> unit = unitOf(pair.reading());
            if (unit.isEmpty()) {
                return fault(pair.reading(), "the raw reading has no known unit", "a reading such as 0.48 V");
            }
            if (common.isPresent() && common.get() != unit.get()) {
                return fault(
                        pair.reading(),
                        "the raw readings have different units",
                        "all in " + common.get().symbol());
            }
            common = unit;
            QuantityReading reading = Quantity.read(pair.reading(), unit.get().dimension());
            QuantityReading pressure =
                    Quantity.read(WrittenPressure.of(pair.pressure()).plain(), Dimension.PRESSURE);
            if (reading instanceof QuantityReading.Misread misread) {
                return fault(pair.reading(), misread);
            }
            if (pressure instanceof QuantityReading.Misread misread) {
                return fault(pair.pressure(), misread);
            }
            Quantity raw = ((QuantityReading.Read) reading).quantity();
            double si = ((QuantityReading.Read) pressure).quantity().si().value();
            points.add(new CalibrationPoint(
                    new Measured(raw.value(), raw.std()), raw.unit().symbol(), si));
        }
        points.sort(Comparator.comparingDouble(point -> point.reading().value()));
        return checked(points);
    }

    /** A curve that turns back, or has one point, belongs to no sensor. */
    private static Reading checked(List<CalibrationPoint> points) {
        if (points.size() < 2) {
            return fault("", "a calibration needs at least two points", "two pairs or more");
        }
        double direction = Math.signum(points.get(1).pressure() - points.get(0).pressure());
        for (int i = 1; i < points.size(); i++) {
            CalibrationPoint one = points.get(i - 1);
            CalibrationPoint next = points.get(i);
            if (!(next.reading().value() > one.reading().value())) {
                return fault(
                        next.reading().value() + " " + next.unit(),
                        "the same reading occurs twice",
                        "each reading once");
            }
            if (direction == 0 || Math.signum(next.pressure() - one.pressure()) != direction) {
                return fault(
                        "",
                        "the pressure does not keep rising with the reading",
                        "pressures that rise with each reading, or fall with each");
            }
        }
        return new Reading(points, Optional.empty());
    }

    private static Optional<Unit> unitOf(String reading) {
        Matcher matcher = NUMBER_AND_UNIT.matcher(reading);
        return matcher.matches() ? Unit.spelled(matcher.group(2)) : Optional.empty();
    }

    private static Reading fault(String found, String what, String expected) {
        return new Reading(
                List.of(), Optional.of(new Fault(found, what, expected, "write   {0.48 V: 0 psi, 4.52 V: 1000 psi}")));
    }

    private static Reading fault(String found, QuantityReading.Misread misread) {
        return new Reading(
                List.of(), Optional.of(new Fault(found, misread.what(), misread.expected(), misread.mend())));
    }
}
