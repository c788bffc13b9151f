package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.course;
import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.Rates;
import io.burnlaw.report.document.Firing.Throat;
import io.burnlaw.report.document.Firing.TimedSpan;
import io.burnlaw.report.document.Quantity;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** A firing as it stands in the document. */
final class FiringDocument {

    private FiringDocument() {}

    /**
     * One firing.
     *
     * @param exponent  with which the rate-averaged pressure was formed [1]
     * @param simulated what the law gives back of its trace, where that was worked out
     * @param histories whether the thinned traces go into the document
     */
    static Firing of(FiringResult result, double exponent, Optional<TraceHistory> simulated, boolean histories) {
        return result.reduction()
                .match(
                        reduced -> of(result, reduced, exponent, histories ? simulated : Optional.empty(), histories),
                        rejected -> of(result, rejected, histories));
    }

    private static Firing of(
            FiringResult result,
            Reduction.Reduced reduced,
            double exponent,
            Optional<TraceHistory> simulated,
            boolean histories) {
        RatePoint main = reduced.points().get(0);
        boolean flagged = reduced.findings().stream().anyMatch(finding -> finding.severity() != Severity.NOTE);
        return new Firing(
                result.id(),
                result.formulation(),
                null,
                flagged ? "flagged" : "used",
                result.trace().orElse(null),
                result.note().orElse(null),
                FindingDocument.of(reduced.findings()),
                reduced.timed() ? null : events(reduced.events()),
                published(reduced.events().burnTime(), reduced.events().burnTimeStd(), Unit.SECOND),
                reduced.timed() ? null : published(reduced.events().actionTime(), Unit.SECOND),
                published(reduced.web(), Unit.MILLIMETRE),
                published(reduced.meanPressure(), main.pressureStd(), Unit.MEGAPASCAL),
                reduced.timed() ? null : published(reduced.maxPressure(), Unit.MEGAPASCAL),
                published(main.pressures().powerMean(exponent), main.pressureStd(), Unit.MEGAPASCAL),
                new Rates(
                        published(reduced.thicknessTimeRate(), Unit.MILLIMETRE_PER_SECOND),
                        published(reduced.massBalanceRate(), Unit.MILLIMETRE_PER_SECOND),
                        difference(reduced, main, exponent)),
                published(reduced.characteristicVelocity(), Unit.METRE_PER_SECOND),
                new Throat(
                        published(reduced.throatBefore(), Unit.MILLIMETRE),
                        published(reduced.throatAfter(), Unit.MILLIMETRE)),
                reduced.totalImpulse().isPresent()
                        ? Quantity.of(reduced.totalImpulse().getAsDouble(), "N.s")
                        : null,
                published(reduced.specificImpulse(), Unit.SECOND),
                published(reduced.thrustCoefficient(), Unit.ONE),
                main.budget().stream()
                        .map(line -> new BudgetLine(
                                line.source(), line.std(), line.unit(), line.contribution(), line.share()))
                        .toList(),
                histories ? along(reduced.along().samples()) : List.of(),
                history(reduced.history(), simulated, histories),
                null,
                null);
    }

    private static Firing of(FiringResult result, Reduction.Rejected rejected, boolean histories) {
        return new Firing(
                result.id(),
                result.formulation(),
                null,
                "rejected",
                result.trace().orElse(null),
                result.note().orElse(null),
                FindingDocument.of(rejected.findings()),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                history(rejected.history(), Optional.empty(), histories),
                null,
                null);
    }

    /** Thickness over time against the mass balance, brought to its pressure by the law's exponent. */
    private static @Nullable Double difference(Reduction.Reduced reduced, RatePoint main, double exponent) {
        if (reduced.massBalanceRate().isEmpty()) {
            return null;
        }
        double pressures = main.pressures().powerMean(1) / reduced.meanPressure();
        return reduced.thicknessTimeRate()
                        * StrictMath.pow(pressures, exponent)
                        / reduced.massBalanceRate().getAsDouble()
                - 1;
    }

    private static Events events(io.burnlaw.reduction.events.Events events) {
        return new Events(
                published(events.start(), Unit.SECOND),
                published(events.ignition(), events.ignitionStd(), Unit.SECOND),
                published(events.webBurnout(), events.webBurnoutStd(), Unit.SECOND),
                published(events.tangentBisector(), Unit.SECOND),
                published(events.maximumCurvature(), Unit.SECOND),
                published(events.end(), Unit.SECOND),
                published(events.actionStart(), Unit.SECOND),
                published(events.actionEnd(), Unit.SECOND));
    }

    private static List<Along> along(List<InstantaneousRate> rates) {
        List<Double> times = along(rates, InstantaneousRate::time, Unit.SECOND);
        List<Double> webs = along(rates, InstantaneousRate::web, Unit.MILLIMETRE);
        List<Double> pressures = along(rates, InstantaneousRate::pressure, Unit.MEGAPASCAL);
        List<Double> along = along(rates, InstantaneousRate::rate, Unit.MILLIMETRE_PER_SECOND);
        return IntStream.range(0, rates.size())
                .mapToObj(i -> new Along(times.get(i), webs.get(i), pressures.get(i), along.get(i)))
                .toList();
    }

    private static List<Double> along(
            List<InstantaneousRate> rates, ToDoubleFunction<InstantaneousRate> column, Unit unit) {
        return course(rates.stream().mapToDouble(column).toArray(), unit);
    }

    static io.burnlaw.report.document.Firing.@Nullable TraceHistory history(
            Optional<TraceHistory> recorded, Optional<TraceHistory> simulated, boolean histories) {
        return recorded.filter(history -> histories)
                .map(TraceHistory::samples)
                .map(history -> new io.burnlaw.report.document.Firing.TraceHistory(
                        course(history.time(), Unit.SECOND),
                        course(history.pressure(), Unit.MEGAPASCAL),
                        history.thrust()
                                .map(newtons -> course(newtons, Unit.NEWTON))
                                .orElse(null),
                        simulated
                                .map(trace -> course(trace.samples().time(), Unit.SECOND))
                                .orElse(null),
                        simulated
                                .map(trace -> course(trace.samples().pressure(), Unit.MEGAPASCAL))
                                .orElse(null)))
                .orElse(null);
    }

    /** A strand as it stands in the document: beside the firings, with what a strand has of a firing. */
    static final class StrandDocument {

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
                    published(reduced.to() - reduced.from(), reduced.timeStd(), Unit.SECOND),
                    published(reduced.meanPressure(), reduced.point().pressureStd(), Unit.MEGAPASCAL),
                    new Rates(
                            published(reduced.point().rate(), reduced.point().rateStd(), Unit.MILLIMETRE_PER_SECOND),
                            null),
                    reduced.point().budget().stream()
                            .map(line -> new BudgetLine(
                                    line.source(), line.std(), line.unit(), line.contribution(), line.share()))
                            .toList(),
                    new TimedSpan(published(reduced.from(), Unit.SECOND), published(reduced.to(), Unit.SECOND)),
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
                    published(result.strand().length(), Unit.MILLIMETRE),
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
}
