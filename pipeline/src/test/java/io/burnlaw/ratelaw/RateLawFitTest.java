package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitResult.LackOfFit;
import io.burnlaw.ratelaw.FitResult.OtherFit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class RateLawFitTest {

    private static final FitOptions QUICK = FitOptions.defaults().withBootstrap(0, 1);

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void pointsOnALawGiveItBack(Weighting weighting) {
        List<FitPoint> points = each(
                Campaigns.spread(6, 0, new SplittableRandom(1)),
                p -> new FitPoint(p.id(), p.cluster(), p.pressure(), 0, p.rate(), 0.01 * p.rate(), 0));
        RateLaw law = fit(points, QUICK.with(weighting)).law();
        assertThat(law.exponent()).isCloseTo(Campaigns.EXPONENT, within(1e-12));
        assertThat(law.coefficient()).isCloseTo(Campaigns.RATE_AT_MEGAPASCAL, within(1e-14));
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void otherUnitsChangeNeitherTheExponentNorItsUncertainty(Weighting weighting) {
        for (int seed = 0; seed < 20; seed++) {
            List<FitPoint> points = uncertain(Campaigns.spread(8, 0.03, new SplittableRandom(seed)));
            List<FitPoint> inches = each(
                    points,
                    p -> new FitPoint(
                            p.id(),
                            p.cluster(),
                            p.pressure() / 6894.757,
                            p.pressureStd() / 6894.757,
                            p.rate() / 0.0254,
                            p.rateStd() / 0.0254,
                            p.systematic()));
            RateLaw a = fit(points, QUICK.with(weighting)).law();
            RateLaw b = fit(inches, QUICK.with(weighting)).law();
            // 1e-9: both searches end where the sum of squares no longer changes in 14 digits.
            assertThat(b.exponent()).isCloseTo(a.exponent(), within(1e-9));
            assertThat(b.exponentStd()).isCloseTo(a.exponentStd(), within(1e-9));
            assertThat(b.rate(3e6 / 6894.757) * 0.0254).isCloseTo(a.rate(3e6), within(1e-9 * a.rate(3e6)));
            assertThat(b.lnStd(3e6 / 6894.757)).isCloseTo(a.lnStd(3e6), within(1e-9));
        }
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void theOrderOfThePointsDoesNotMatter(Weighting weighting) {
        for (int seed = 0; seed < 20; seed++) {
            List<FitPoint> points = uncertain(Campaigns.spread(9, 0.03, new SplittableRandom(seed)));
            List<FitPoint> shuffled = new ArrayList<>(points);
            Collections.shuffle(shuffled, new Random(seed));
            RateLaw a = fit(points, QUICK.with(weighting)).law();
            RateLaw b = fit(shuffled, QUICK.with(weighting)).law();
            assertThat(b.exponent()).isCloseTo(a.exponent(), within(1e-10));
            assertThat(b.lnStd(3e6)).isCloseTo(a.lnStd(3e6), within(1e-10));
        }
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void rateAndExponentAreUncorrelatedAtTheReferencePressure(Weighting weighting) {
        RateLaw law = fit(uncertain(Campaigns.spread(8, 0.03, new SplittableRandom(5))), QUICK.with(weighting))
                .law();
        double correlation = law.covariance() / Math.sqrt(law.rateVariance() * law.exponentVariance());
        // Two digits of the pressure are up to 5 % of it, of a spread of 0.7 in ln P.
        assertThat(correlation).isCloseTo(0, within(0.05 / 0.7));
        assertThat(law.referencePressure() / 1e5).isEqualTo(Math.rint(law.referencePressure() / 1e5));
    }

    @Test
    void theReferencePressureIsTheGeometricMeanOnlyForProportionalWeights() {
        List<FitPoint> points = Campaigns.spread(8, 0.03, new SplittableRandom(5));
        // Of 0.8 and 8 MPa: 2.53 MPa. Constant weights listen to the fast end.
        assertThat(fit(points, QUICK).law().referencePressure()).isEqualTo(2.5e6);
        assertThat(fit(points, QUICK.with(Weighting.CONSTANT)).law().referencePressure())
                .isGreaterThan(2.9e6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"PROPORTIONAL", "CONSTANT"})
    void theLawAloneKnowsHowFarAPointLiesOff(Weighting weighting) {
        List<FitPoint> points = Campaigns.spread(9, 0.03, new SplittableRandom(11));
        FitResult.Fitted fit = fit(points, QUICK.with(weighting));
        for (int i = 0; i < points.size(); i++) {
            // Constant weights fit differences, not logarithms: at 3 % scatter the two part by half of that, of 2.
            assertThat(fit.law().studentized(points.get(i)))
                    .isCloseTo(
                            fit.residuals().get(i).studentized(),
                            within(weighting == Weighting.PROPORTIONAL ? 1e-9 : 0.1));
        }
    }

    @Test
    void aFiringWithTwoEqualPointsCountsAsOne() {
        List<FitPoint> points = Campaigns.spread(7, 0.03, new SplittableRandom(3));
        List<FitPoint> doubled = new ArrayList<>(points);
        points.forEach(p -> doubled.add(new FitPoint(p.id() + "b", p.cluster(), p.pressure(), 0, p.rate(), 0, 0)));
        RateLaw one = fit(points, QUICK).law();
        RateLaw two = fit(doubled, QUICK).law();
        assertThat(two.degreesOfFreedom()).isEqualTo(one.degreesOfFreedom()).isEqualTo(5);
        assertThat(two.exponentStd()).isCloseTo(one.exponentStd(), within(1e-12));
        assertThat(two.lnStd(1e6)).isCloseTo(one.lnStd(1e6), within(1e-12));
        assertThat(two.residualScatter()).isCloseTo(one.residualScatter(), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 1000})
    void moreFiringsDoNotShrinkWhatTheyShare(int count) {
        List<FitPoint> points = each(
                Campaigns.spread(count, 0.02, new SplittableRandom(4)),
                p -> new FitPoint(p.id(), p.cluster(), p.pressure(), 0, p.rate(), 0.03 * p.rate(), 0.015));
        RateLaw law = fit(points, QUICK).law();
        assertThat(Math.sqrt(law.commonError().rateVariance())).isCloseTo(0.015, within(1e-12));
        assertThat(law.commonError().exponent()).isCloseTo(0, within(1e-12));
        assertThat(law.lnStd(law.referencePressure())).isGreaterThan(0.015);
        Interval.Estimated interval =
                law.interval(law.referencePressure(), 0.95).estimated().orElseThrow();
        // 1.96 · 0.015, and hardly more where a thousand firings leave no scatter.
        assertThat(Math.log(interval.high() / law.rateAtReference())).isGreaterThan(1.9599 * 0.015);
        if (count == 1000) {
            assertThat(Math.log(interval.high() / law.rateAtReference())).isLessThan(1.05 * 1.96 * 0.015);
        }
    }

    @Test
    void pressuresOfOneRelativeUncertaintyDoNotMoveTheLaw() {
        List<FitPoint> points = Campaigns.spread(9, 0.03, new SplittableRandom(6));
        List<FitPoint> uncertain =
                each(points, p -> new FitPoint(p.id(), p.cluster(), p.pressure(), 0.01 * p.pressure(), p.rate(), 0, 0));
        FitResult.Fitted plain = fit(points, QUICK);
        FitResult.Fitted effective = fit(uncertain, QUICK);
        assertThat(plain.pressureErrors()).isEqualTo(PressureErrors.NONE);
        assertThat(effective.pressureErrors()).isEqualTo(PressureErrors.EFFECTIVE_VARIANCE);
        assertThat(effective.law().exponent()).isCloseTo(plain.law().exponent(), within(1e-10));
        assertThat(effective.law().exponentStd()).isCloseTo(plain.law().exponentStd(), within(1e-9));
    }

    @Test
    void aPointOfUncertainPressureCountsLess() {
        List<FitPoint> points = new ArrayList<>(Campaigns.spread(9, 0.01, new SplittableRandom(7)));
        FitPoint first = points.get(0);
        double off = 1.25 * first.rate();
        points.set(0, new FitPoint("f0", "f0", first.pressure(), 0, off, 0, 0));
        double exact = fit(points, QUICK).law().exponent();
        points.set(0, new FitPoint("f0", "f0", first.pressure(), 0.6 * first.pressure(), off, 0, 0));
        double doubted = fit(points, QUICK).law().exponent();
        double orthogonal = fit(points, QUICK.with(PressureErrors.ORTHOGONAL_DISTANCE))
                .law()
                .exponent();
        assertThat(Math.abs(doubted - Campaigns.EXPONENT)).isLessThan(0.5 * Math.abs(exact - Campaigns.EXPONENT));
        assertThat(Math.abs(orthogonal - Campaigns.EXPONENT)).isLessThan(0.5 * Math.abs(exact - Campaigns.EXPONENT));
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void effectiveVarianceAndOrthogonalDistanceAgreeWhereErrorsAreSmall(Weighting weighting) {
        for (int seed = 0; seed < 10; seed++) {
            List<FitPoint> points = uncertain(Campaigns.spread(10, 0.02, new SplittableRandom(seed)));
            RateLaw effective = fit(points, QUICK.with(weighting)).law();
            RateLaw orthogonal = fit(points, QUICK.with(weighting).with(PressureErrors.ORTHOGONAL_DISTANCE))
                    .law();
            // Attenuation of a slope by errors of 1 % in x of spread 0.7: 0.01²/0.7² = 2e-4 of 0.42.
            assertThat(orthogonal.exponent()).isCloseTo(effective.exponent(), within(3e-3));
            assertThat(orthogonal.exponentStd())
                    .isCloseTo(effective.exponentStd(), within(0.05 * effective.exponentStd()));
        }
    }

    @Test
    void profileIsTheIntervalFromTheCovarianceBetweenLogarithms() {
        FitResult.Fitted fit = fit(Campaigns.spread(6, 0.04, new SplittableRandom(8)), QUICK);
        Interval.Estimated student = PowerLawOracleTest.estimated(
                PowerLawOracleTest.method(fit, Interval.Method.STUDENT_T).coefficient());
        Interval.Estimated profile = PowerLawOracleTest.estimated(
                PowerLawOracleTest.method(fit, Interval.Method.PROFILE).coefficient());
        assertThat(profile.low()).isCloseTo(student.low(), within(1e-9 * student.low()));
        assertThat(profile.high()).isCloseTo(student.high(), within(1e-9 * student.high()));
    }

    @Test
    void aPointFarOffIsNamedKeptAndHeldBackByTheRobustFit() {
        List<FitPoint> points = new ArrayList<>(Campaigns.spread(10, 0.01, new SplittableRandom(9)));
        FitPoint p = points.get(9);
        points.set(9, new FitPoint("wild", "wild", p.pressure(), 0, 1.3 * p.rate(), 0, 0));
        FitResult.Fitted fit = fit(points, QUICK.withRobust(true));
        assertThat(fit.law().points()).isEqualTo(10);
        assertThat(fit.findings())
                .filteredOn(f -> f.code() == FindingCode.OUTLIER)
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("wild").contains("+"));
        OtherFit huber = fit.others().stream()
                .filter(other -> other.name().equals("huber"))
                .findFirst()
                .orElseThrow();
        assertThat(Math.abs(huber.law().exponent() - Campaigns.EXPONENT))
                .isLessThan(0.5 * Math.abs(fit.law().exponent() - Campaigns.EXPONENT));
        assertThat(huber.sentence()).contains("wild (0.");
    }

    @Test
    void repeatedFiringsThatAgreeBetterThanTheLawAreALackOfFit() {
        List<FitPoint> points = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(10);
        for (int i = 0; i < 12; i++) {
            double pressure = 1e6 * (1 + i / 3 * 2);
            double bent = Campaigns.truth(pressure) * (i / 3 == 1 ? 1.1 : 1);
            points.add(new FitPoint(
                    "f" + i, "f" + i, pressure, 0, bent * Math.exp(0.01 * Campaigns.normal(random)), 0, 0));
        }
        FitResult.Fitted fit = fit(points, QUICK);
        LackOfFit test = fit.lackOfFit().orElseThrow();
        assertThat(test.pValue()).isLessThan(0.001);
        assertThat(test.pureScatter()).isBetween(0.004, 0.02);
        assertThat(fit.findings()).extracting(Finding::code).contains(FindingCode.LACK_OF_FIT);
    }

    @Test
    void anExponentWhoseIntervalReachesOneIsCalledUnstable() {
        List<FitPoint> points = each(
                Campaigns.spread(6, 0.05, new SplittableRandom(11)),
                p -> new FitPoint(
                        p.id(), p.cluster(), p.pressure(), 0, p.rate() * Math.pow(p.pressure() / 1e6, 0.55), 0, 0));
        assertThat(fit(points, QUICK).findings()).extracting(Finding::code).contains(FindingCode.UNSTABLE_EXPONENT);
    }

    @Test
    void theSameSeedGivesTheSameBootstrap() {
        List<FitPoint> points = Campaigns.spread(8, 0.03, new SplittableRandom(12));
        FitOptions options = FitOptions.defaults().withBootstrap(500, 42);
        assertThat(RateLawFit.fit(points, options)).isEqualTo(RateLawFit.fit(points, options));
        assertThat(fit(points, options).intervals())
                .isNotEqualTo(fit(points, options.withBootstrap(500, 43)).intervals());
    }

    private static List<FitPoint> uncertain(List<FitPoint> points) {
        return each(
                points,
                p -> new FitPoint(
                        p.id(),
                        p.cluster(),
                        p.pressure(),
                        8e3 + 0.004 * p.pressure(),
                        p.rate(),
                        0.02 * p.rate(),
                        0.01));
    }

    private static List<FitPoint> each(List<FitPoint> points, UnaryOperator<FitPoint> change) {
        return points.stream().map(change).toList();
    }

    private static FitResult.Fitted fit(List<FitPoint> points, FitOptions options) {
        return RateLawFit.fit(points, options).fitted().orElseThrow();
    }
}
