package io.burnlaw.publish;

import io.burnlaw.batch.BatchResult.BatchLaw;
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
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** A law as it stands in the document. */
final class LawDocument {

    /** Enough that a straight band on logarithmic axes looks smooth where it bends. */
    private static final int CURVE_POINTS = 41;

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
     * @param level  of the intervals [1]
     */
    static Law of(FitResult.Fitted fitted, double level) {
        MethodIntervals published = fitted.publishedIntervals();
        RateLaw law = fitted.law();
        return law(
                law,
                law,
                Optional.empty(),
                new Range(law.pressureLow(), law.pressureHigh()),
                published.coefficient(),
                published.exponent(),
                published.rateAtReference(),
                code(published.method()),
                fitted.pressureErrors().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                fitted.intervals().stream()
                        .flatMap(intervals -> side(intervals, level, intervals.method() == fitted.published()).stream())
                        .toList(),
                fitted.lackOfFit(),
                level);
    }

    /**
     * The single law over batches, with the intervals of the plain fit beside it.
     *
     * @param plain   law of the same points as if each firing stood for itself
     * @param level   of the intervals [1]
     */
    static Law of(BatchLaw batches, FitResult.Fitted plain, double level) {
        return law(
                batches.law(),
                batches.next(),
                Optional.empty(),
                new Range(batches.law().pressureLow(), batches.law().pressureHigh()),
                batches.law().interval(RateLaw.COEFFICIENT_PRESSURE, level),
                batches.exponent(),
                batches.law().interval(batches.law().referencePressure(), level),
                code(batches.exponent().method()),
                "effective-variance",
                plain.intervals().stream()
                        .flatMap(intervals -> side(intervals, level, false).stream())
                        .toList(),
                plain.lackOfFit(),
                level);
    }

    /**
     * A law whose intervals are those of its covariance.
     *
     * @param law   over the range of its points
     * @param level of the intervals [1]
     */
    static Law of(RateLaw law, double level) {
        return law(
                law,
                law,
                Optional.empty(),
                new Range(law.pressureLow(), law.pressureHigh()),
                law.interval(RateLaw.COEFFICIENT_PRESSURE, level),
                law.exponentInterval(level),
                law.interval(law.referencePressure(), level),
                code(Interval.Method.STUDENT_T),
                "effective-variance",
                List.of(),
                Optional.empty(),
                level);
    }

    /**
     * The law of one regime.
     *
     * @param range in which it holds
     * @param level of the intervals [1]
     */
    static Law of(RateLaw law, String regime, Range range, double level) {
        Interval coefficient = law.interval(RateLaw.COEFFICIENT_PRESSURE, level);
        return law(
                law,
                law,
                Optional.of(regime),
                range,
                coefficient,
                law.exponentInterval(level),
                law.interval(law.referencePressure(), level),
                code(Interval.Method.STUDENT_T),
                "none",
                List.of(),
                Optional.empty(),
                level);
    }

    private static Law law(
            RateLaw law,
            RateLaw next,
            Optional<String> regime,
            Range range,
            Interval coefficient,
            Interval exponent,
            Interval rateAtReference,
            String method,
            String pressureErrors,
            List<MethodInterval> intervals,
            Optional<LackOfFit> lackOfFit,
            double level) {
        double reference = law.referencePressure();
        return new Law(
                regime.orElse(null),
                PublishedQuantities.of(
                        law.coefficient(),
                        coefficient,
                        OptionalDouble.of(law.coefficient() * law.lnStd(RateLaw.COEFFICIENT_PRESSURE)),
                        Unit.MILLIMETRE_PER_SECOND),
                PublishedQuantities.of(law.exponent(), exponent, OptionalDouble.of(law.exponentStd()), Unit.ONE),
                PublishedQuantities.of(reference, Unit.MEGAPASCAL),
                PublishedQuantities.of(
                        law.rateAtReference(),
                        rateAtReference,
                        OptionalDouble.of(law.rateAtReference() * law.lnStd(reference)),
                        Unit.MILLIMETRE_PER_SECOND),
                covarianceAtReference(law),
                sharedCovariance(law.commonError()),
                PublishedQuantities.of(range.low(), Unit.MEGAPASCAL),
                PublishedQuantities.of(range.high(), Unit.MEGAPASCAL),
                law.residualScatter(),
                law.degreesOfFreedom(),
                law.points(),
                method,
                law.weighting().name().toLowerCase(Locale.ROOT),
                pressureErrors,
                UnitPairs.of(law, level).stream().map(LawDocument::pair).toList(),
                intervals,
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

    private static String code(Interval.Method method) {
        return method.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Optional<MethodInterval> side(MethodIntervals intervals, double level, boolean published) {
        Optional<Interval.Estimated> coefficient = intervals.coefficient().estimated();
        Optional<Interval.Estimated> exponent = intervals.exponent().estimated();
        if (coefficient.isEmpty() || exponent.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new MethodInterval(
                code(intervals.method()),
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
