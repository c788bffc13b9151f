package io.burnlaw.report.table;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.table.PublishedTable.Cell;
import io.burnlaw.report.table.PublishedTable.Column;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** laws.csv: one row a fitted law, the single one (segment 0) and those of the regimes. */
public final class LawTable {

    private static final List<Column> COLUMNS = List.of(
            new Column("formulation", null, "string", "Id of the propellant."),
            new Column(
                    "segment",
                    null,
                    "integer",
                    "0 for one law over the whole range, else the number of the regime from low to high pressure."),
            new Column("regime", null, "string", "The trade word for the regime."),
            new Column("coefficient", "mm/s", "double", "a of r = a P^n with r in mm/s and P in MPa, absolute."),
            new Column("coefficient_low", "mm/s", "double", "Lower end of its interval."),
            new Column("coefficient_high", "mm/s", "double", "Upper end of its interval."),
            new Column("exponent", null, "double", "n of r = a P^n."),
            new Column("exponent_low", null, "double", "Lower end of its interval."),
            new Column("exponent_high", null, "double", "Upper end of its interval."),
            new Column("level", null, "double", "Confidence of the intervals, between 0 and 1."),
            new Column("interval_method", null, "string", "How the intervals were made."),
            new Column("pressure_low", "MPa", "double", "Lower end of the law's range, absolute."),
            new Column("pressure_high", "MPa", "double", "Upper end of the law's range, absolute."),
            new Column(
                    "reference_pressure",
                    "MPa",
                    "double",
                    "Pressure at which rate and exponent are uncorrelated, absolute."),
            new Column("rate_at_reference", "mm/s", "double", "Rate there."),
            new Column(
                    "variance_ln_rate",
                    null,
                    "double",
                    "Variance of the logarithm of the rate at the reference pressure."),
            new Column("covariance_ln_rate_exponent", null, "double", "Covariance of that and the exponent."),
            new Column("variance_exponent", null, "double", "Variance of the exponent."),
            new Column("residual_scatter", null, "double", "Relative standard deviation about the law."),
            new Column("degrees_of_freedom", null, "double", "Of that scatter."),
            new Column("points_used", null, "integer", "How many points."),
            new Column("weighting", null, "string", "Weighting of the points."),
            new Column("pressure_errors", null, "string", "How errors in pressure were treated."),
            new Column("use", null, "boolean", "Whether it is one of the laws to design with."),
            new Column(
                    "coefficient_in_psi",
                    "[in_i]/s",
                    "double",
                    "a of r = a P^n with r in in/s and P in psi, absolute."),
            new Column("coefficient_in_psi_low", "[in_i]/s", "double", "Lower end of its interval."),
            new Column("coefficient_in_psi_high", "[in_i]/s", "double", "Upper end of its interval."),
            new Column("pressure_low_in_psi", "[psi]", "double", "Lower end of the law's range, absolute."),
            new Column("pressure_high_in_psi", "[psi]", "double", "Upper end of the law's range, absolute."));

    private LawTable() {}

    /** {@return the table of all laws} */
    public static PublishedTable of(Characterization document) {
        List<List<Cell>> rows = new ArrayList<>();
        for (Formulation formulation : document.formulations()) {
            if (formulation.singleLaw() != null) {
                rows.add(row(formulation, 0, formulation.singleLaw()));
            }
            List<Law> laws = formulation.regimes() == null
                    ? List.of()
                    : formulation.regimes().laws();
            for (int i = 0; i < laws.size(); i++) {
                rows.add(row(formulation, i + 1, laws.get(i)));
            }
        }
        return new PublishedTable(
                "laws.csv", "Rate laws: " + document.campaign().title(), COLUMNS, rows);
    }

    private static List<Cell> row(Formulation formulation, int segment, Law law) {
        UnitPair inPsi = inPsi(law);
        return List.of(
                Cell.of(formulation.id()),
                Cell.of(segment),
                Cell.of(law.regime()),
                Cell.of(MM_PER_S.value(law.coefficient())),
                Cell.of(MM_PER_S.low(law.coefficient())),
                Cell.of(MM_PER_S.high(law.coefficient())),
                Cell.of(law.exponent().value()),
                Cell.of(law.exponent().low()),
                Cell.of(law.exponent().high()),
                Cell.of(law.exponent().level()),
                Cell.of(law.intervalMethod()),
                Cell.of(MPA.value(law.pressureLow())),
                Cell.of(MPA.value(law.pressureHigh())),
                Cell.of(MPA.value(law.referencePressure())),
                Cell.of(MM_PER_S.value(law.rateAtReference())),
                covariance(law, 0, 0),
                covariance(law, 0, 1),
                covariance(law, 1, 1),
                Cell.of(law.residualScatter()),
                Cell.of(law.degreesOfFreedom()),
                Cell.of(law.pointsUsed()),
                Cell.of(law.weighting()),
                Cell.of(law.pressureErrors()),
                Cell.of(Boolean.toString(segment > 0 == formulation.useLaws().size() > 1)),
                Cell.of(inPsi == null ? null : (Double) inPsi.coefficient()),
                Cell.of(inPsi == null ? null : inPsi.low()),
                Cell.of(inPsi == null ? null : inPsi.high()),
                Cell.of(psi(law.pressureLow())),
                Cell.of(psi(law.pressureHigh())));
    }

    private static double psi(Quantity pressure) {
        return Unit.POUND_PER_SQUARE_INCH.fromSi(Unit.MEGAPASCAL.toSi(MPA.value(pressure)));
    }

    private static @Nullable UnitPair inPsi(Law law) {
        return law.unitPairs().stream()
                .filter(pair ->
                        pair.pressureUnit().equals("[psi]") && pair.rateUnit().equals("[in_i]/s"))
                .findFirst()
                .orElse(null);
    }

    private static Cell covariance(Law law, int row, int column) {
        boolean there =
                law.covariance().size() > row && law.covariance().get(row).size() > column;
        return there ? Cell.of(law.covariance().get(row).get(column)) : Cell.EMPTY;
    }
}
