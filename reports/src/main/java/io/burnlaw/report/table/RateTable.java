package io.burnlaw.report.table;

import static io.burnlaw.report.document.Unit.KELVIN;
import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.MadeOnDemand;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.table.PublishedTable.Cell;
import io.burnlaw.report.table.PublishedTable.Column;
import java.util.ArrayList;
import java.util.List;

/** rates.csv: one row a rate-pressure point. */
public final class RateTable {

    private static final List<Column> COLUMNS = List.of(
            new Column("point", null, "string", "Id of the point, unique in the campaign."),
            new Column("formulation", null, "string", "Id of the propellant."),
            new Column(
                    "firing",
                    null,
                    "string",
                    "Id of the firing that the point comes from; empty for a point measured directly."),
            new Column("source", null, "string", "firing, timed (a firing without a record), dwell, strand or point."),
            new Column("method", null, "string", "How the rate was obtained."),
            new Column("pressure", "MPa", "double", "Rate-averaged pressure, absolute."),
            new Column("pressure_uncertainty", "MPa", "double", "Standard uncertainty of the pressure."),
            new Column("mean_pressure", "MPa", "double", "Plain mean of the pressure over the burn time, absolute."),
            new Column("rate", "mm/s", "double", "Burning rate, as it was fitted."),
            new Column("rate_uncertainty", "mm/s", "double", "Standard uncertainty of the rate."),
            new Column("temperature", "K", "double", "Temperature of the propellant."),
            new Column("pressure_kind", null, "string", "Always absolute."),
            new Column(
                    "lower_grade",
                    null,
                    "boolean",
                    "Whether the pressure was derived from thrust or the burn timed by eye."),
            new Column("use", null, "string", "yes, or no with the reason."),
            new Column("standardized_residual", null, "double", "Studentized residual about the law."),
            new Column("segment", null, "integer", "Number of the regime in which the point lies, from 1."),
            new Column("batch", null, "string", "The casting that its propellant came from."));

    private RateTable() {}

    private record Measured(Formulation formulation, Point point) {}

    /** {@return the table of all points} */
    public static PublishedTable of(Characterization document) {
        List<Measured> points = new ArrayList<>();
        for (Formulation formulation : document.formulations()) {
            formulation.points().forEach(point -> points.add(new Measured(formulation, point)));
        }
        return new PublishedTable(
                "rates.csv",
                "Rate-pressure points: " + document.campaign().title(),
                COLUMNS,
                new MadeOnDemand<>(
                        points.size(),
                        i -> row(points.get(i).formulation(), points.get(i).point())));
    }

    private static List<Cell> row(Formulation formulation, Point point) {
        return List.of(
                Cell.of(point.id()),
                Cell.of(formulation.id()),
                Cell.of(point.firing()),
                Cell.of(point.source()),
                Cell.of(point.method()),
                Cell.of(MPA.value(point.pressure())),
                Cell.of(MPA.std(point.pressure())),
                Cell.of(MPA.value(point.meanPressure())),
                Cell.of(MM_PER_S.value(point.rate())),
                Cell.of(MM_PER_S.std(point.rate())),
                point.temperature() == null ? Cell.EMPTY : Cell.of(KELVIN.value(point.temperature())),
                Cell.of("absolute"),
                Cell.of(Boolean.toString(point.lowerGrade())),
                Cell.of(point.used() ? "yes" : "no: " + (point.reason() == null ? "not used" : point.reason())),
                Cell.of(point.standardizedResidual()),
                Cell.of(point.segment()),
                Cell.of(point.batch()));
    }
}
