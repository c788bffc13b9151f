package io.burnlaw.report.table;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Comparison.RatioPoint;
import io.burnlaw.report.document.Quantity;
import java.util.List;

/** Comparisons with numbers, one a row. */
public final class ComparedTable {

    private ComparedTable() {}

    /** {@return the comparisons of a document that could be made; the ratio is that in the middle of the shared range} */
    public static TypedTable<Comparison> of(Characterization document) {
        List<Comparison> rows = document.comparisons().stream()
                .filter(each -> each.tests() != null)
                .toList();
        return new TypedTable<>("comparisons", "comparisons", rows)
                .words("candidate", "Id of the propellant.", Comparison::candidate)
                .number(
                        "shared_low",
                        "MPa",
                        "Lower end of the shared pressures, absolute.",
                        r -> r.ratio().get(0).pressure())
                .number(
                        "shared_high",
                        "MPa",
                        "Upper end of the shared pressures, absolute.",
                        r -> r.ratio().get(r.ratio().size() - 1).pressure())
                .number(
                        "pressure",
                        "MPa",
                        "Pressure of the ratio, absolute.",
                        r -> middle(r).pressure())
                .quantity("ratio", null, "Rate over that of the baseline.", r -> ratio(middle(r)))
                .quantity(
                        "exponent_difference",
                        null,
                        "Exponent less that of the baseline.",
                        Comparison::exponentDifference)
                .number(
                        "probability",
                        "Of such a difference by chance, after Holm.",
                        r -> r.tests().adjustedPValue())
                .number("smallest_detectable", "Change that could have been shown.", Comparison::smallestDetectable)
                .truth("differs", "Whether a difference was shown.", Comparison::differs);
    }

    private static RatioPoint middle(Comparison comparison) {
        return comparison.ratio().get(comparison.ratio().size() / 2);
    }

    private static Quantity ratio(RatioPoint point) {
        return new Quantity(point.value(), null, point.low(), point.high(), null, null);
    }
}
