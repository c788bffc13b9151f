package io.burnlaw.publish;

import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Comparison.ComparisonTests;
import io.burnlaw.report.document.Comparison.FTest;
import io.burnlaw.report.document.Comparison.RatioPoint;
import io.burnlaw.report.document.Quantity;
import java.util.List;

/** Comparisons and trends as they stand in the document. */
public final class ComparisonDocument {

    private ComparisonDocument() {}

    /**
     * Comparisons, in their order.
     *
     * @param comparisons of a campaign, or across campaigns
     * @return the same in the document's words
     */
    public static List<Comparison> of(List<io.burnlaw.comparison.Comparison> comparisons) {
        return comparisons.stream()
                .map(each -> each.match(ComparisonDocument::compared, ComparisonDocument::notCompared))
                .toList();
    }

    /**
     * Trends, in their order.
     *
     * @param trends over the fractions of additives
     * @return the same in the document's words
     */
    public static List<io.burnlaw.report.document.Characterization.DoseTrend> ofTrends(List<DoseTrend> trends) {
        return trends.stream()
                .map(each -> new io.burnlaw.report.document.Characterization.DoseTrend(
                        each.additive(),
                        each.baseline(),
                        each.formulations(),
                        // per unit of mass fraction inside, per cent in the document
                        new Quantity(
                                each.slope() / 100,
                                null,
                                each.interval().low() / 100,
                                each.interval().high() / 100,
                                each.interval().level(),
                                each.slopeStd() / 100),
                        each.trend().pValue(),
                        each.sentence()))
                .toList();
    }

    private static Comparison compared(io.burnlaw.comparison.Comparison.Compared numbers) {
        return new Comparison(
                numbers.baseline(),
                numbers.candidate(),
                numbers.additive().orElse(null),
                numbers.fraction().isPresent() ? (Double) numbers.fraction().getAsDouble() : null,
                numbers.ratio().stream()
                        .map(each -> new RatioPoint(
                                Unit.MEGAPASCAL.fromSi(each.pressure()), each.value(), each.low(), each.high()))
                        .toList(),
                new Quantity(
                        numbers.exponentDifference(),
                        null,
                        numbers.exponentInterval().low(),
                        numbers.exponentInterval().high(),
                        numbers.exponentInterval().level(),
                        numbers.exponentDifferenceStd()),
                new ComparisonTests(test(numbers.parallel()), test(numbers.coincident()), numbers.adjustedPValue()),
                numbers.smallestDetectable(),
                numbers.differs(),
                numbers.verdict(),
                null);
    }

    private static FTest test(io.burnlaw.comparison.Comparison.FTest test) {
        return new FTest(test.statistic(), test.numeratorDegrees(), test.denominatorDegrees(), test.pValue());
    }

    private static Comparison notCompared(io.burnlaw.comparison.Comparison.NotCompared none) {
        return new Comparison(
                none.baseline(),
                none.candidate(),
                none.additive().orElse(null),
                none.fraction().isPresent() ? (Double) none.fraction().getAsDouble() : null,
                List.of(),
                null,
                null,
                null,
                false,
                "Not compared.",
                none.reason());
    }
}
