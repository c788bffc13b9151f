package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.course;
import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
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
        FiringDraft draft = logged(result);
        if (!reduced.timed()) {
            draft.events = events(reduced.events());
            draft.actionTime = published(reduced.events().actionTime(), Unit.SECOND);
            draft.maxPressure = published(reduced.maxPressure(), Unit.MEGAPASCAL);
        }
        draft.burnTime = published(reduced.events().burnTime(), reduced.events().burnTimeStd(), Unit.SECOND);
        draft.web = published(reduced.web(), Unit.MILLIMETRE);
        draft.meanPressure = published(reduced.meanPressure(), main.pressureStd(), Unit.MEGAPASCAL);
        draft.rateMeanPressure = published(main.pressures().powerMean(exponent), main.pressureStd(), Unit.MEGAPASCAL);
        draft.rates = new Rates(
                published(reduced.thicknessTimeRate(), Unit.MILLIMETRE_PER_SECOND),
                published(reduced.massBalanceRate(), Unit.MILLIMETRE_PER_SECOND),
                difference(reduced, main, exponent));
        draft.characteristicVelocity = published(reduced.characteristicVelocity(), Unit.METRE_PER_SECOND);
        draft.throat = new Throat(
                published(reduced.throatBefore(), Unit.MILLIMETRE), published(reduced.throatAfter(), Unit.MILLIMETRE));
        draft.totalImpulse = reduced.totalImpulse().isPresent()
                ? Quantity.of(reduced.totalImpulse().getAsDouble(), "N.s")
                : null;
        draft.specificImpulse = published(reduced.specificImpulse(), Unit.SECOND);
        draft.thrustCoefficient = published(reduced.thrustCoefficient(), Unit.ONE);
        draft.budgetOf(main);
        draft.along = histories ? along(reduced.along().samples()) : List.of();
        draft.history = history(reduced.history(), simulated, histories);
        return draft.used(result.id(), result.formulation(), reduced.findings());
    }

    private static Firing of(FiringResult result, Reduction.Rejected rejected, boolean histories) {
        FiringDraft draft = logged(result);
        draft.history = history(rejected.history(), Optional.empty(), histories);
        return draft.rejected(result.id(), result.formulation(), rejected.findings());
    }

    private static FiringDraft logged(FiringResult result) {
        FiringDraft draft = new FiringDraft();
        draft.trace = result.trace().orElse(null);
        draft.note = result.note().orElse(null);
        return draft;
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
            FiringDraft draft = new FiringDraft();
            draft.kind = "strand";
            draft.trace = result.strand().trace();
            draft.note = result.strand().note().orElse(null);
            draft.web = published(result.strand().length(), Unit.MILLIMETRE);
            draft.history = history(result.reduction().history(), Optional.empty(), histories);
            String id = result.strand().id();
            String formulation = result.strand().formulation();
            return result.reduction()
                    .match(
                            reduced -> timed(draft, reduced).used(id, formulation, reduced.findings()),
                            rejected -> draft.rejected(id, formulation, rejected.findings()));
        }

        private static FiringDraft timed(FiringDraft draft, StrandReduction.Reduced reduced) {
            RatePoint point = reduced.point();
            draft.burnTime = published(reduced.to() - reduced.from(), reduced.timeStd(), Unit.SECOND);
            draft.meanPressure = published(reduced.meanPressure(), point.pressureStd(), Unit.MEGAPASCAL);
            draft.rates = new Rates(published(point.rate(), point.rateStd(), Unit.MILLIMETRE_PER_SECOND), null);
            draft.budgetOf(point);
            draft.timed = new TimedSpan(published(reduced.from(), Unit.SECOND), published(reduced.to(), Unit.SECOND));
            return draft;
        }
    }
}
