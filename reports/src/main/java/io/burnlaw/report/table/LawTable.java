package io.burnlaw.report.table;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;
import static io.burnlaw.report.table.TypedTable.Part.HIGH;
import static io.burnlaw.report.table.TypedTable.Part.LOW;

import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Quantity;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Fitted laws, one a row: the single one (segment 0) and those of the regimes; all of a campaign are laws.csv. */
public final class LawTable {

    private LawTable() {}

    /** A row: the single law with segment 0, or that of a regime with its number. */
    public record Fitted(Formulation formulation, int segment, Law law) {

        private static Stream<Fitted> of(Formulation formulation) {
            List<Law> regimes = formulation.regimes() == null
                    ? List.of()
                    : formulation.regimes().laws();
            return Stream.concat(
                    Stream.ofNullable(formulation.singleLaw()).map(law -> new Fitted(formulation, 0, law)),
                    IntStream.range(0, regimes.size()).mapToObj(i -> new Fitted(formulation, i + 1, regimes.get(i))));
        }

        private double covariance(int row, int column) {
            return law.covariance().get(row).get(column);
        }

        private @Nullable Double inPsi(Function<UnitPair, @Nullable Double> figure) {
            return law.unitPairs().stream()
                    .filter(pair -> pair.pressureUnit().equals("[psi]")
                            && pair.rateUnit().equals("[in_i]/s"))
                    .findFirst()
                    .map(figure)
                    .orElse(null);
        }
    }

    /** Loads what a table needs, for whoever has a core to spare. */
    public static void prepare() {
        of("", List.of());
    }

    /** {@return the table of all laws of a campaign} */
    public static TypedTable<Fitted> of(Characterization document) {
        return of(document.campaign().title(), document.formulations());
    }

    /** {@return the table of the laws of one propellant} */
    public static TypedTable<Fitted> of(Formulation formulation) {
        return of(formulation.title(), List.of(formulation));
    }

    private static TypedTable<Fitted> of(String title, List<Formulation> formulations) {
        List<Fitted> rows = formulations.stream().flatMap(Fitted::of).toList();
        return new TypedTable<>("laws", "Rate laws: " + title, rows)
                .words("formulation", "Id of the propellant.", r -> r.formulation.id())
                .count(
                        "segment",
                        "0 for one law over the whole range, else the number of the regime from low to high pressure.",
                        Fitted::segment)
                .words("regime", "The trade word for the regime.", r -> r.law.regime())
                .quantity(
                        "coefficient",
                        MM_PER_S,
                        "a of r = a P^n with r in mm/s and P in MPa, absolute.",
                        r -> r.law.coefficient(),
                        LOW,
                        HIGH)
                .quantity("exponent", null, "n of r = a P^n.", r -> r.law.exponent(), LOW, HIGH)
                .number(
                        "level",
                        "Confidence of the intervals, between 0 and 1.",
                        r -> r.law.exponent().level())
                .words("interval_method", "How the intervals were made.", r -> r.law.intervalMethod())
                .quantity("pressure_low", MPA, "Lower end of the law's range, absolute.", r -> r.law.pressureLow())
                .quantity("pressure_high", MPA, "Upper end of the law's range, absolute.", r -> r.law.pressureHigh())
                .quantity(
                        "reference_pressure",
                        MPA,
                        "Pressure at which rate and exponent are uncorrelated, absolute.",
                        r -> r.law.referencePressure())
                .quantity(
                        "rate_at_reference", MM_PER_S, "Rate at the reference pressure.", r -> r.law.rateAtReference())
                .number(
                        "variance_ln_rate",
                        "Variance of the logarithm of the rate at the reference pressure.",
                        r -> r.covariance(0, 0))
                .number(
                        "covariance_ln_rate_exponent",
                        "Covariance of the logarithm of that rate and the exponent.",
                        r -> r.covariance(0, 1))
                .number("variance_exponent", "Variance of the exponent.", r -> r.covariance(1, 1))
                .number("residual_scatter", "Relative standard deviation about the law.", r -> r.law.residualScatter())
                .number("degrees_of_freedom", "Degrees of freedom of that scatter.", r -> r.law.degreesOfFreedom())
                .count("points_used", "How many points.", r -> r.law.pointsUsed())
                .words("weighting", "Weighting of the points.", r -> r.law.weighting())
                .words("pressure_errors", "How errors in pressure were treated.", r -> r.law.pressureErrors())
                .truth(
                        "use",
                        "Whether it is one of the laws to design with.",
                        r -> r.segment > 0 == r.formulation.useLaws().size() > 1)
                .number(
                        "coefficient_in_psi",
                        "[in_i]/s",
                        "a of r = a P^n with r in in/s and P in psi, absolute.",
                        r -> r.inPsi(UnitPair::coefficient))
                .number("coefficient_in_psi_low", "[in_i]/s", "Lower end of its interval.", r -> r.inPsi(UnitPair::low))
                .number(
                        "coefficient_in_psi_high",
                        "[in_i]/s",
                        "Upper end of its interval.",
                        r -> r.inPsi(UnitPair::high))
                .number(
                        "pressure_low_in_psi",
                        "[psi]",
                        "Lower end of the law's range, absolute.",
                        r -> psi(r.law.pressureLow()))
                .number(
                        "pressure_high_in_psi",
                        "[psi]",
                        "Upper end of the law's range, absolute.",
                        r -> psi(r.law.pressureHigh()));
    }

    private static double psi(Quantity pressure) {
        return Unit.POUND_PER_SQUARE_INCH.fromSi(Unit.MEGAPASCAL.toSi(MPA.value(pressure)));
    }
}
