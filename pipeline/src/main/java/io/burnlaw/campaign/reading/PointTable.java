package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.DirectPoint;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Optional;

/** Reads points.csv: rate-pressure points that were measured directly. */
final class PointTable {

    private PointTable() {}

    static Rows<DirectPoint> read(TableText table, RowContext context, List<Problem> problems) {
        TableColumns columns = TableColumns.of(table, columns(), problems);
        boolean rate = columns.column("rate").isPresent();
        boolean times = columns.column("length").isPresent()
                && columns.column("burn_time").isPresent();
        if (!rate && !times) {
            problems.add(new Problem(
                    table.file(),
                    table.headingLine(),
                    "rate",
                    "there is no rate",
                    "",
                    "a column rate, or length and burn_time",
                    "add a column with the heading   rate [mm/s]"));
        }
        return Rows.of(
                columns, context, "point", (row, id, formulation) -> point(row, id, formulation, context, problems));
    }

    static List<Column> columns() {
        return List.of(
                Column.text("point").needed(),
                Column.text("formulation").needed(),
                Column.text("batch"),
                Column.of("pressure", Dimension.PRESSURE).needed(),
                Column.text("pressure_kind"),
                Column.of("rate", Dimension.SPEED),
                Column.of("length", Dimension.LENGTH),
                Column.of("burn_time", Dimension.TIME),
                Column.of("temperature", Dimension.TEMPERATURE),
                Column.of("ambient_pressure", Dimension.PRESSURE),
                Column.text("use"),
                Column.text("note"));
    }

    private static Optional<DirectPoint> point(
            TableRow row, String id, String formulation, RowContext context, List<Problem> problems) {
        row.required("pressure");
        Optional<Measured> pressure = absolute(row, context, problems);
        pressure.ifPresent(found -> row.plausible("pressure", Plausible.BURNING_PRESSURE, found));
        Optional<Measured> rate = rate(row);
        rate.ifPresent(
                found -> row.plausible(row.text("rate").isPresent() ? "rate" : "burn_time", Plausible.RATE, found));
        Optional<String> setAside = row.setAside();
        if (pressure.isEmpty() || rate.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DirectPoint(
                id,
                formulation,
                pressure.get(),
                rate.get(),
                row.temperature("temperature"),
                setAside,
                row.text("note"),
                row.line()));
    }

    private static Optional<Measured> absolute(TableRow row, RowContext context, List<Problem> problems) {
        Optional<Measured> written = row.measured("pressure");
        Optional<PressureKind> byUnit = row.kindByUnit("pressure");
        Optional<PressureKind> byRow = row.choice("pressure_kind", PressureKind.class);
        Optional<PressureKind> kind =
                byUnit.or(() -> byRow).or(() -> context.head().trace().pressureKind());
        if (byUnit.isPresent() && byRow.isPresent() && !byUnit.equals(byRow)) {
            row.wrong(
                    "pressure_kind",
                    "the unit and this cell contradict each other",
                    "what the unit of the pressure says",
                    "correct one of the two");
        }
        if (kind.isEmpty()
                && problems.stream().noneMatch(problem -> problem.place().equals("pressure_kind"))) {
            problems.add(new Problem(
                    "points.csv",
                    row.line(),
                    "pressure_kind",
                    "it is not stated whether the pressures are gauge or absolute",
                    "",
                    "gauge (0 in open air) or absolute (about 100 kPa there)",
                    "add a column pressure_kind, or write it below trace: in campaign.yaml"));
        }
        double add = kind.orElse(PressureKind.ABSOLUTE) == PressureKind.GAUGE ? context.ambientPressure(row) : 0;
        if (written.isPresent() && !(written.get().value() + add > 0)) {
            row.wrong(
                    "pressure",
                    "the pressure is not above vacuum",
                    "an absolute pressure above zero",
                    "check whether it is gauge");
            return Optional.empty();
        }
        return written.map(value -> new Measured(value.value() + add, value.std()));
    }

    /** As stated, or as length over time; relative uncertainties of the two add in quadrature (JCGM 100, 5.1.6). */
    private static Optional<Measured> rate(TableRow row) {
        Optional<Measured> stated = row.positive("rate");
        Optional<Measured> length = row.length("length");
        Optional<Measured> time = row.positive("burn_time");
        if (stated.isPresent() || row.text("rate").isPresent()) {
            return stated;
        }
        if (length.isEmpty() || time.isEmpty()) {
            if (row.text("length").isEmpty() || row.text("burn_time").isEmpty()) {
                row.wrong("rate", "there is no rate", "", "a rate, or a length and a burn time", "fill it in");
            }
            return Optional.empty();
        }
        double rate = length.get().value() / time.get().value();
        if (length.get().std().isEmpty() && time.get().std().isEmpty()) {
            return Optional.of(Measured.of(rate));
        }
        double relative = Math.hypot(
                length.get().stdOr(0) / length.get().value(),
                time.get().stdOr(0) / time.get().value());
        return Optional.of(Measured.of(rate, rate * relative));
    }
}
