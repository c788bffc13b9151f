package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.CampaignResult.Predictions;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.characterize.FormulationResult.PointResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.prediction.LeaveOneOut;
import io.burnlaw.prediction.PredictionCheck;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.report.document.Formulation.LawWithout;
import io.burnlaw.report.document.Formulation.NotFitted;
import io.burnlaw.report.document.Formulation.OtherFit;
import io.burnlaw.report.document.Formulation.TemperatureSensitivity;
import io.burnlaw.report.document.Formulation.WithinBetween;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A formulation as it stands in the document. */
final class FormulationDocument {

    private FormulationDocument() {}

    /**
     * One formulation.
     *
     * @param outlook what its law predicts
     */
    static io.burnlaw.report.document.Formulation of(
            FormulationResult result, Predictions outlook, CampaignResult campaign) {
        Formulation formulation = result.formulation();
        double level = campaign.campaign().fit().confidence();
        Optional<FitResult.Fitted> fitted = result.fit().fitted();
        Optional<Law> law = fitted.map(fit -> result.batchLaw()
                .map(batches -> LawDocument.of(batches, fit, level))
                .orElseGet(() -> LawDocument.of(fit, level)));
        NotFitted none = result.fit()
                .match(
                        fit -> null,
                        not -> new NotFitted(not.reason(), mend(not.mend(), result, rejected(formulation, campaign))));
        return new io.burnlaw.report.document.Formulation(
                formulation.id(),
                formulation.title(),
                formulation.baseline(),
                formulation.compareWith().orElse(null),
                formulation.additive().orElse(null),
                formulation.additiveFraction().isPresent()
                        ? (Double) formulation.additiveFraction().getAsDouble()
                        : null,
                published(formulation.density(), Unit.GRAM_PER_CUBIC_CENTIMETRE),
                published(result.characteristicVelocity(), Unit.METRE_PER_SECOND),
                Verdict.of(result, level),
                Verdict.caution(result).orElse(null),
                result.points().stream().map(PointDocument::of).toList(),
                law.orElse(null),
                none,
                null,
                fitted.map(fit -> fit.others().stream()
                                .map(FormulationDocument::other)
                                .toList())
                        .orElse(List.of()),
                result.regimes()
                        .map(found -> RegimeDocument.of(found, level))
                        .map(regimes -> law.map(regimes::agreeingWith).orElse(regimes))
                        .orElse(null),
                BatchDocument.of(result, level).orElse(null),
                result.threshold().map(RegimeDocument::of).orElse(null),
                result.faster().stream().map(RegimeDocument::of).toList(),
                result.temperature()
                        .flatMap(TemperatureResult::estimated)
                        .map(TemperatureDocument::of)
                        .orElse(null),
                result.regimes().map(RegimeDocument::stability).orElse(null),
                result.pooling()
                        .flatMap(Pooling::pooled)
                        .map(PoolingDocument::of)
                        .orElse(null),
                PredictionCheckDocument.of(outlook.closure()),
                Validity.range(result).orElse(null),
                Validity.notEstimated(result),
                FindingDocument.of(findings(result, outlook)),
                without(result));
    }

    /** Nothing where the law is that of several batches: without a firing their spread would change too. */
    private static @Nullable List<LawWithout> without(FormulationResult result) {
        Optional<PiecewiseLaw> laws = result.laws();
        if (laws.isEmpty() || laws.get().laws().size() == 1 && result.batchLaw().isPresent()) {
            return null;
        }
        return LeaveOneOut.laws(laws.get(), result.lawPoints()).stream()
                .map(each -> {
                    RateLaw full = laws.get().laws().get(each.piece());
                    return new LawWithout(
                            each.cluster(),
                            each.piece(),
                            digits(Unit.MILLIMETRE_PER_SECOND.fromSi(each.law().coefficient())),
                            digits(each.law().exponent()),
                            digits(StrictMath.expm1(each.law().lnRateAtReference() - full.lnRateAtReference())),
                            digits(each.law().exponent() - full.exponent()));
                })
                .toList();
    }

    /** Seven digits: a hundredth of what a rounded law may miss. */
    private static double digits(double value) {
        return new BigDecimal(value).round(new MathContext(7)).doubleValue();
    }

    /** Firings that were meant to be used and gave no rate. */
    private static long rejected(Formulation formulation, CampaignResult campaign) {
        return campaign.firings().stream()
                .filter(firing -> firing.formulation().equals(formulation.id()))
                .filter(firing -> firing.reduction()
                        .match(
                                reduced -> false,
                                none -> none.findings().stream()
                                        .noneMatch(finding -> finding.code() == FindingCode.SET_ASIDE)))
                .count();
    }

    /** Nobody has to fire again as long as what was fired can be mended. */
    private static String mend(String more, FormulationResult result, long rejected) {
        if (rejected == 0) {
            return more;
        }
        String first =
                "First check why " + (rejected == 1 ? "1 firing was" : rejected + " firings were") + " rejected.";
        return result.points().isEmpty() ? first : first + " " + more;
    }

    private static List<Finding> findings(FormulationResult result, Predictions outlook) {
        Optional<Finding> poor = outlook.closure().match(PredictionCheck.Predicted::finding, none -> Optional.empty());
        return Stream.concat(result.findings().stream(), poor.stream()).toList();
    }

    private static OtherFit other(io.burnlaw.ratelaw.FitResult.OtherFit fit) {
        Optional<Interval.Estimated> coefficient = fit.coefficient().estimated();
        Optional<Interval.Estimated> exponent = fit.exponent().estimated();
        return new OtherFit(
                fit.name(),
                Unit.MILLIMETRE_PER_SECOND.fromSi(fit.law().coefficient()),
                coefficient.map(e -> Unit.MILLIMETRE_PER_SECOND.fromSi(e.low())).orElse(null),
                coefficient
                        .map(e -> Unit.MILLIMETRE_PER_SECOND.fromSi(e.high()))
                        .orElse(null),
                fit.law().exponent(),
                exponent.map(Interval.Estimated::low).orElse(null),
                exponent.map(Interval.Estimated::high).orElse(null),
                fit.sentence());
    }

    /** A rate-pressure point as it stands in the document. */
    private static final class PointDocument {

        private PointDocument() {}

        /**
         * One point.
         *
         * @param result the point and what became of it
         */
        static Point of(PointResult result) {
            RatePoint point = result.point();
            return new Point(
                    point.id(),
                    point.cluster(),
                    point.firing().orElse(null),
                    result.batch().orElse(null),
                    Choice.word(point.source()),
                    published(result.pressure(), point.pressureStd(), Unit.MEGAPASCAL),
                    published(point.pressures().powerMean(1), point.pressureStd(), Unit.MEGAPASCAL),
                    published(result.rate(), point.rateStd(), Unit.MILLIMETRE_PER_SECOND),
                    published(point.temperature(), Unit.DEGREE_CELSIUS),
                    point.method(),
                    point.lowerGrade(),
                    result.used(),
                    point.setAside().orElse(null),
                    result.residual().isPresent() ? (Double) result.residual().getAsDouble() : null,
                    result.segment().isPresent() ? (Integer) result.segment().getAsInt() : null);
        }
    }

    /** The two ways to the exponent as they stand in the document. */
    private static final class PoolingDocument {

        private PoolingDocument() {}

        /** {@return both exponents for the document} */
        static WithinBetween of(Pooling.Pooled pooled) {
            return new WithinBetween(
                    exponent(pooled.within()),
                    exponent(pooled.between()),
                    pooled.firingScatter(),
                    pooled.pValue(),
                    pooled.sentence());
        }

        private static Quantity exponent(Pooling.Exponent exponent) {
            return published(exponent.value(), exponent.interval(), OptionalDouble.of(exponent.std()), Unit.ONE);
        }
    }

    /** The temperature sensitivity as it stands in the document. */
    private static final class TemperatureDocument {

        /** UCUM code; the same in kelvin and in degrees Celsius, since a difference is meant. */
        private static final String PER_KELVIN = "/K";

        private TemperatureDocument() {}

        /** {@return the sensitivity in the document's units} */
        static TemperatureSensitivity of(TemperatureResult.Estimated sensitivity) {
            return new TemperatureSensitivity(
                    perKelvin(sensitivity.sigmaP(), sensitivity.sigmaPInterval(), sensitivity.sigmaPStd()),
                    perKelvin(sensitivity.piK(), sensitivity.piKInterval(), null),
                    published(sensitivity.referenceTemperature(), Unit.DEGREE_CELSIUS),
                    sensitivity.sentence());
        }

        private static Quantity perKelvin(double value, Interval interval, @Nullable Double std) {
            Optional<Interval.Estimated> estimated = interval.estimated();
            return new Quantity(
                    value,
                    PER_KELVIN,
                    estimated.map(Interval.Estimated::low).orElse(null),
                    estimated.map(Interval.Estimated::high).orElse(null),
                    estimated.map(Interval.Estimated::level).orElse(null),
                    std);
        }
    }
}
