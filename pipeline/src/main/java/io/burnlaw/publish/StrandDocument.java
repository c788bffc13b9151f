package io.burnlaw.publish;

import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Firing.Rates;
import io.burnlaw.report.document.Firing.TimedSpan;
import io.burnlaw.report.document.Quantity;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A strand as it stands in the document: beside the firings, with what a strand has of a firing. */
final class StrandDocument {

    private StrandDocument() {}

    /**
     * One strand.
     *
     * @param histories whether the thinned trace goes into the document
     */
    static Firing of(StrandResult result, boolean histories) {
        return result.reduction()
                .match(
                        reduced -> of(result, reduced, histories),
                        rejected -> firing(result, "rejected", null, null, null, List.of(), null, histories));
    }

    private static Firing of(StrandResult result, StrandReduction.Reduced reduced, boolean histories) {
        boolean flagged = reduced.findings().stream().anyMatch(finding -> finding.severity() != Severity.NOTE);
        return firing(
                result,
                flagged ? "flagged" : "used",
                PublishedQuantities.of(reduced.to() - reduced.from(), reduced.timeStd(), Unit.SECOND),
                PublishedQuantities.of(reduced.meanPressure(), reduced.point().pressureStd(), Unit.MEGAPASCAL),
                new Rates(
                        PublishedQuantities.of(
                                reduced.point().rate(), reduced.point().rateStd(), Unit.MILLIMETRE_PER_SECOND),
                        null),
                reduced.point().budget().stream()
                        .map(line -> new BudgetLine(
                                line.source(), line.std(), line.unit(), line.contribution(), line.share()))
                        .toList(),
                new TimedSpan(
                        PublishedQuantities.of(reduced.from(), Unit.SECOND),
                        PublishedQuantities.of(reduced.to(), Unit.SECOND)),
                histories);
    }

    private static Firing firing(
            StrandResult result,
            String status,
            @Nullable Quantity burnTime,
            @Nullable Quantity meanPressure,
            @Nullable Rates rates,
            List<BudgetLine> budget,
            @Nullable TimedSpan timed,
            boolean histories) {
        return new Firing(
                result.strand().id(),
                result.strand().formulation(),
                "strand",
                status,
                result.strand().trace(),
                result.strand().note().orElse(null),
                FindingDocument.of(result.reduction().findings()),
                null,
                burnTime,
                null,
                PublishedQuantities.of(result.strand().length(), Unit.MILLIMETRE),
                meanPressure,
                null,
                null,
                rates,
                null,
                null,
                null,
                null,
                null,
                budget,
                List.of(),
                FiringDocument.history(result.reduction().history(), Optional.empty(), histories),
                timed,
                null);
    }
}
