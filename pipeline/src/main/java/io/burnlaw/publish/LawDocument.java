package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.FitResult.LackOfFit;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;
import io.burnlaw.ratelaw.UnitPairs;
import io.burnlaw.ratelaw.UnitPairs.CoefficientIn;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.CurvePoint;
import io.burnlaw.report.document.Law.MethodInterval;
import io.burnlaw.report.document.Law.UnitPair;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** A law as it stands in the document. */
final class LawDocument {

    /** Enough that a straight band on logarithmic axes looks smooth where it bends. */
    private static final int CURVE_POINTS = 41;

    /** What is done about the uncertainty of the pressures where nothing else is said. */
    private static final String CARRIED_OVER = Choice.word(PressureErrors.EFFECTIVE_VARIANCE);

    private LawDocument() {}

    /**
     * Where a law holds.
     *
     * @param low  [Pa, absolute]
     * @param high [Pa, absolute]
     */
    record Range(double low, double high) {}

    /**
     * The single law, with the intervals of every method.
     *
     * @param level of the intervals [1]
     */
    static Law of(FitResult.Fitted fitted, double level) {
        RateLaw law = fitted.law();
        List<MethodInterval> beside = fitted.intervals().stream()
                .flatMap(intervals -> side(intervals, level, intervals.method() == fitted.published()).stream())
                .toList();
        String errors = Choice.word(fitted.pressureErrors());
        return law(law, law, null, over(law), fitted.publishedIntervals(), errors, beside, fitted.lackOfFit(), level);
    }

    /**
     * The single law over batches, with the intervals of the plain fit beside it.
     *
     * @param plain   law of the same points as if each firing stood for itself
     * @param level   of the intervals [1]
     */
    static Law of(BatchLaw batches, FitResult.Fitted plain, double level) {
        RateLaw law = batches.law();
        MethodIntervals published =
                intervals(law, batches.exponent(), batches.exponent().method(), level);
        List<MethodInterval> beside = plain.intervals().stream()
                .flatMap(intervals -> side(intervals, level, false).stream())
                .toList();
        return law(law, batches.next(), null, over(law), published, CARRIED_OVER, beside, plain.lackOfFit(), level);
    }

    /**
     * A law whose intervals are those of its covariance.
     *
     * @param law   over the range of its points
     * @param level of the intervals [1]
     */
    static Law of(RateLaw law, double level) {
        return alone(law, null, over(law), CARRIED_OVER, level);
    }

    /**
     * The law of one regime.
     *
     * @param range in which it holds
     * @param level of the intervals [1]
     */
    static Law of(RateLaw law, String regime, Range range, double level) {
        return alone(law, regime, range, "none", level);
    }

    private static Law alone(RateLaw law, @Nullable String regime, Range range, String pressureErrors, double level) {
        MethodIntervals own = intervals(law, law.exponentInterval(level), Interval.Method.STUDENT_T, level);
        return law(law, law, regime, range, own, pressureErrors, List.of(), Optional.empty(), level);
    }

    private static MethodIntervals intervals(RateLaw law, Interval exponent, Interval.Method method, double level) {
        return new MethodIntervals(
                method,
                law.interval(RateLaw.COEFFICIENT_PRESSURE, level),
                exponent,
                law.interval(law.referencePressure(), level),
                OptionalInt.empty());
    }

    private static Range over(RateLaw law) {
        return new Range(law.pressureLow(), law.pressureHigh());
    }

    private static Law law(
            RateLaw law,
            RateLaw next,
            @Nullable String regime,
            Range range,
            MethodIntervals published,
            String pressureErrors,
            List<MethodInterval> beside,
            Optional<LackOfFit> lackOfFit,
            double level) {
        double reference = law.referencePressure();
        return new Law(
                regime,
                published(
                        law.coefficient(),
                        published.coefficient(),
                        OptionalDouble.of(law.coefficient() * law.lnStd(RateLaw.COEFFICIENT_PRESSURE)),
                        Unit.MILLIMETRE_PER_SECOND),
                published(law.exponent(), published.exponent(), OptionalDouble.of(law.exponentStd()), Unit.ONE),
                published(reference, Unit.MEGAPASCAL),
                published(
                        law.rateAtReference(),
                        published.rateAtReference(),
                        OptionalDouble.of(law.rateAtReference() * law.lnStd(reference)),
                        Unit.MILLIMETRE_PER_SECOND),
                covarianceAtReference(law),
                sharedCovariance(law.commonError()),
                published(range.low(), Unit.MEGAPASCAL),
                published(range.high(), Unit.MEGAPASCAL),
                law.residualScatter(),
                law.degreesOfFreedom(),
                law.points(),
                Choice.word(published.method()),
                Choice.word(law.weighting()),
                pressureErrors,
                UnitPairs.of(law, level).stream().map(LawDocument::pair).toList(),
                beside,
                lackOfFit
                        .map(test -> new io.burnlaw.report.document.Law.LackOfFit(
                                test.statistic(),
                                test.lackDegreesOfFreedom(),
                                test.pureDegreesOfFreedom(),
                                test.pValue(),
                                test.pureScatter()))
                        .orElse(null),
                curve(law, next, range, level));
    }

    private static @Nullable List<List<Double>> sharedCovariance(SystematicError shared) {
        return shared.equals(SystematicError.NONE)
                ? null
                : List.of(
                        List.of(shared.rateVariance(), shared.covariance()),
                        List.of(shared.covariance(), shared.exponentVariance()));
    }

    /** Scatter and shared error together, so that the matrix alone gives the published standard uncertainties. */
    private static List<List<Double>> covarianceAtReference(RateLaw law) {
        SystematicError shared = law.commonError();
        double covariance = law.covariance() + shared.covariance();
        return List.of(
                List.of(law.rateVariance() + shared.rateVariance(), covariance),
                List.of(covariance, law.exponentVariance() + shared.exponentVariance()));
    }

    private static UnitPair pair(CoefficientIn units) {
        Optional<Interval.Estimated> interval = units.interval().estimated();
        return new UnitPair(
                units.pressureUnit().ucum(),
                units.rateUnit().ucum(),
                units.coefficient(),
                interval.map(Interval.Estimated::low).orElse(null),
                interval.map(Interval.Estimated::high).orElse(null),
                units.exponent(),
                List.of(
                        List.of(units.lnVariance(), units.covariance()),
                        List.of(units.covariance(), units.exponentVariance())));
    }

    private static Optional<MethodInterval> side(MethodIntervals intervals, double level, boolean published) {
        Optional<Interval.Estimated> coefficient = intervals.coefficient().estimated();
        Optional<Interval.Estimated> exponent = intervals.exponent().estimated();
        if (coefficient.isEmpty() || exponent.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new MethodInterval(
                Choice.word(intervals.method()),
                level,
                Unit.MILLIMETRE_PER_SECOND.fromSi(coefficient.get().low()),
                Unit.MILLIMETRE_PER_SECOND.fromSi(coefficient.get().high()),
                exponent.get().low(),
                exponent.get().high(),
                published,
                intervals.replicates().isPresent() ? intervals.replicates().getAsInt() : null));
    }

    private static List<CurvePoint> curve(RateLaw law, RateLaw nextFiring, Range range, double level) {
        List<CurvePoint> curve = new ArrayList<>();
        double ratio = range.high() / range.low();
        for (int i = 0; i < CURVE_POINTS; i++) {
            double pressure = i == CURVE_POINTS - 1
                    ? range.high()
                    : range.low() * StrictMath.pow(ratio, (double) i / (CURVE_POINTS - 1));
            Optional<Interval.Estimated> mean = law.interval(pressure, level).estimated();
            Optional<Interval.Estimated> next =
                    nextFiring.predict(pressure, level).estimated();
            curve.add(new CurvePoint(
                    drawn(Unit.MEGAPASCAL.fromSi(pressure)),
                    drawn(Unit.MILLIMETRE_PER_SECOND.fromSi(law.rate(pressure))),
                    mean.map(e -> drawnRate(e.low())).orElse(null),
                    mean.map(e -> drawnRate(e.high())).orElse(null),
                    next.map(e -> drawnRate(e.low())).orElse(null),
                    next.map(e -> drawnRate(e.high())).orElse(null)));
        }
        return curve;
    }

    private static double drawnRate(double rate) {
        return drawn(Unit.MILLIMETRE_PER_SECOND.fromSi(rate));
    }

    /** Eight digits: a curve is there to be drawn, and weighs on the page. */
    private static double drawn(double value) {
        return new BigDecimal(value).round(new MathContext(8)).doubleValue();
    }
}
