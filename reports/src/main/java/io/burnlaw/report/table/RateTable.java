package io.burnlaw.report.table;

import static io.burnlaw.report.document.Unit.KELVIN;
import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;
import static io.burnlaw.report.table.TypedTable.Part.STD;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import java.util.List;

/** Rate-pressure points, one a row; all of a campaign are rates.csv. */
public final class RateTable {

    private RateTable() {}

    /** A row: a point and the id of its propellant. */
    public record Measured(String formulation, Point point) {}

    /** {@return the table of all points of a campaign} */
    public static TypedTable<Measured> of(Characterization document) {
        return of(document.campaign().title(), document.formulations());
    }

    /** {@return the table of the points of one propellant} */
    public static TypedTable<Measured> of(Formulation formulation) {
        return of(formulation.title(), List.of(formulation));
    }

    private static TypedTable<Measured> of(String title, List<Formulation> formulations) {
        List<Measured> rows = formulations.stream()
                .flatMap(each -> each.points().stream().map(point -> new Measured(each.id(), point)))
                .toList();
        return new TypedTable<>("rates", "Rate-pressure points: " + title, rows)
                .words("point", "Id of the point, unique in the campaign.", row -> row.point.id())
                .words("formulation", "Id of the propellant.", Measured::formulation)
                .words(
                        "firing",
                        "Id of the firing that the point comes from; empty for a point measured directly.",
                        row -> row.point.firing())
                .words(
                        "source",
                        "firing, timed (a firing without a record), dwell, strand or point.",
                        row -> row.point.source())
                .words("method", "How the rate was obtained.", row -> row.point.method())
                .quantity("pressure", MPA, "Rate-averaged pressure, absolute.", row -> row.point.pressure(), STD)
                .quantity(
                        "mean_pressure",
                        MPA,
                        "Plain mean of the pressure over the burn time, absolute.",
                        row -> row.point.meanPressure())
                .quantity("rate", MM_PER_S, "Burning rate used in the fit.", row -> row.point.rate(), STD)
                .quantity("temperature", KELVIN, "Temperature of the propellant.", row -> row.point.temperature())
                .words("pressure_kind", "Always absolute.", row -> "absolute")
                .truth(
                        "lower_grade",
                        "Whether the pressure was derived from thrust or the burn timed by eye.",
                        row -> row.point.lowerGrade())
                .words("use", "yes, or no with the reason.", row -> use(row.point))
                .words("reason", null, row -> row.point.reason())
                .number(
                        "standardized_residual",
                        "Studentized residual about the law.",
                        row -> row.point.standardizedResidual())
                .count("segment", "Number of the regime in which the point lies, from 1.", row -> row.point.segment())
                .words("batch", "The casting that its propellant came from.", row -> row.point.batch());
    }

    private static String use(Point point) {
        return point.used() ? "yes" : "no: " + (point.reason() == null ? "not used" : point.reason());
    }
}
