package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static io.burnlaw.ratelaw.PowerLawOracleTest.estimated;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitResult.LackOfFit;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.FitResult.Residual;
import io.burnlaw.ratelaw.IntervalMethods.BootstrapIntervals;
import io.burnlaw.ratelaw.PooledExponent.BurnCurve;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Intervals, residuals and repeated firings of points that were chosen so that a pencil gives the answer. */
class ClosedFormsTest {

    private static final double[] EVEN = {-2, -1, 0, 1, 2};

    private static FitPoint point(int i, double lnPressure, double lnRate, double std, double shared) {
        double rate = Math.exp(lnRate);
        return new FitPoint("p" + i, "p" + i, Math.exp(lnPressure), 0, rate, rate * Math.hypot(std, shared), shared);
    }

    private static FitResult.Fitted fit(List<FitPoint> points, FitOptions options) {
        return RateLawFit.fit(points, options).fitted().orElseThrow();
    }

    private static void same(Interval found, Interval expected) {
        // 1e-9: ends are searched to 1e-12 of a standard error, on a sum of squares that has 16 digits
        assertRelative(estimated(found).low(), estimated(expected).low(), 1e-9);
        assertRelative(estimated(found).high(), estimated(expected).high(), 1e-9);
    }

    @Test
    @Oracle(
            value =
                    "closed form: the profile of a straight line's sum of squares is a parabola, and its interval that of"
                            + " Student's t (Bates and Watts 1988, section 6.1)",
            agreement = "limits 1e-9, relative, with and without a shared error, known scatter and estimated")
    void theProfileOfALineIsTheIntervalFromTheCovariance() {
        for (Weighting weighting : List.of(Weighting.PROPORTIONAL, Weighting.MEASURED)) {
            for (double shared : new double[] {0, 0.01}) {
                List<FitPoint> points = new ArrayList<>();
                SplittableRandom random = new SplittableRandom(7);
                for (int i = 0; i < 8; i++) {
                    double ln = Math.log(1.2e6) + 0.25 * i;
                    // the shared error grows along the points, so that it tilts the law as well as lifting it
                    points.add(point(
                            i, ln, -5 + 0.4 * (ln - 14) + 0.02 * Campaigns.normal(random), 0.02, shared * (1 + i)));
                }
                FitResult.Fitted fit = fit(
                        points,
                        FitOptions.defaults().with(weighting).withLevel(0.9).withBootstrap(0, 1));
                MethodIntervals profile = fit.intervals().stream()
                        .filter(each -> each.method() == Interval.Method.PROFILE)
                        .findFirst()
                        .orElseThrow();
                assertThat(fit.publishedIntervals().method()).isEqualTo(Interval.Method.STUDENT_T);
                same(profile.exponent(), fit.publishedIntervals().exponent());
                same(profile.coefficient(), fit.publishedIntervals().coefficient());
                same(profile.rateAtReference(), fit.publishedIntervals().rateAtReference());
            }
        }
    }

    @Test
    @Oracle(
            value = "closed form: one of five even points off a line by d keeps 4/5 of d, of variance 4/5; normal tail"
                    + " 2(1 - Phi(3)) = 0.00269979606326 (SciPy 1.17.1)",
            agreement = "residual 1e-9, probability 1e-8, relative")
    void onePointOffALineOfKnownScatter() {
        double std = 0.02;
        // 3 standard deviations off, after the fit has followed
        double off = 3 * std / Math.sqrt(0.8);
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            points.add(point(i, 15 + 0.5 * EVEN[i], -5 + 0.2 * EVEN[i] + (i == 2 ? off : 0), std, 0));
        }
        FitResult.Fitted fit =
                fit(points, FitOptions.defaults().with(Weighting.MEASURED).withBootstrap(0, 1));
        Residual middle = fit.residuals().get(2);
        assertRelative(middle.lnResidual(), 0.8 * off, 1e-9);
        assertRelative(middle.studentized(), 3, 1e-9);
        assertRelative(middle.externallyStudentized(), 3, 1e-9);
        assertRelative(middle.pValue(), 5 * 0.0026997960632602, 1e-8);
        assertThat(fit.findings()).anySatisfy(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.OUTLIER);
            assertThat(finding.message()).contains("Point p2").contains("3.0 standard deviations");
        });
        // the others have moved by a fifth of d; the ends, of leverage 1/5 + 4/10, have the least room
        Residual end = fit.residuals().get(0);
        assertRelative(end.lnResidual(), -0.2 * off, 1e-9);
        assertRelative(end.studentized(), -0.2 * off / (std * Math.sqrt(0.4)), 1e-9);
        assertThat(end.pValue()).isEqualTo(1);
    }

    @Test
    void threeFiringsLeaveNothingToJudgeOneOfThemBy() {
        List<FitPoint> points = List.of(point(0, 14, -5.0, 0, 0), point(1, 15, -4.5, 0, 0), point(2, 16, -4.2, 0, 0));
        for (Residual each :
                fit(points, FitOptions.defaults().withBootstrap(0, 1)).residuals()) {
            // one degree of freedom: each studentized residual is 1 whatever the points are
            assertThat(Math.abs(each.studentized())).isCloseTo(1, within(1e-9));
            assertThat(each.pValue()).isEqualTo(1);
        }
    }

    @Test
    @Oracle(
            value = "closed form: pairs of firings at r(1 ± e) about a law that their means lie on scatter by e·sqrt(2)"
                    + " (three pairs: six squares over three degrees of freedom), and lack no fit",
            agreement = "relative 1e-6")
    void pairsAboutALawScatterAsTheyWereMade() {
        double e = 0.03;
        for (Weighting weighting : List.of(Weighting.CONSTANT, Weighting.PROPORTIONAL)) {
            List<FitPoint> points = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                double ln = 14 + i / 2;
                double side = i % 2 == 0 ? 1 : -1;
                double factor = weighting == Weighting.CONSTANT ? 1 + side * e : Math.exp(side * e);
                points.add(point(i, ln, -5 + 0.5 * (ln - 15) + Math.log(factor), 0, 0));
            }
            LackOfFit test = fit(points, FitOptions.defaults().with(weighting).withBootstrap(0, 1))
                    .lackOfFit()
                    .orElseThrow();
            assertRelative(test.pureScatter(), e * Math.sqrt(2), 1e-6);
            assertThat(test.statistic()).isCloseTo(0, within(1e-9));
            assertThat(test.lackDegreesOfFreedom()).isEqualTo(1);
            assertThat(test.pureDegreesOfFreedom()).isEqualTo(3);
        }
    }

    @Test
    void withoutARepeatedPressureOrAThirdOneThereIsNoTestOfTheFit() {
        List<FitPoint> single = new ArrayList<>();
        List<FitPoint> two = new ArrayList<>();
        List<FitPoint> exact = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 6; i++) {
            single.add(point(i, 14 + 0.3 * i, -5 + 0.1 * i + 0.01 * Campaigns.normal(random), 0, 0));
            two.add(point(i, 14 + i % 2, -5 + 0.4 * (i % 2) + 0.01 * Campaigns.normal(random), 0, 0));
            // repeated to the digit: no scatter between them, whatever their means do
            exact.add(point(i, 14 + i / 2, i / 2 == 1 ? -4.7 : -5 + 0.2 * (i / 2), 0, 0));
        }
        FitOptions plain = FitOptions.defaults().withBootstrap(0, 1);
        assertThat(fit(single, plain).lackOfFit()).isEmpty();
        assertThat(fit(two, plain).lackOfFit()).isEmpty();
        assertThat(fit(exact, plain).lackOfFit()).isEmpty();
    }

    @Test
    @Oracle(
            value =
                    "SciPy 1.17.1 and NumPy: general_statistics_checks.py (eq. 14.9 to 14.15 of Efron and Tibshirani 1993"
                            + " on given replicates, quantiles at (count + 1)p)",
            agreement = "limits 1e-10, relative")
    void limitsOfGivenReplicatesAgree() {
        double[] replicates = new double[61];
        for (int k = 0; k < 59; k++) {
            replicates[(7 * k) % 59] = 0.30 + 0.001 * (k + 0.02 * k * k);
        }
        replicates[59] = 0.34;
        replicates[60] = 0.34;
        double[] without = {0.31, 0.318, 0.3195, 0.3205, 0.322, 0.3215, 0.336};
        double[][] expected = LIMITS;
        double[] levels = {0.5, 0.8, 0.9};
        for (int i = 0; i < 3; i++) {
            Interval.Estimated found = estimated(BootstrapIntervals.corrected(replicates, without, 0.34, levels[i]));
            assertRelative(found.low(), expected[i][0], 1e-10);
            assertRelative(found.high(), expected[i][1], 1e-10);
        }
        // without acceleration the limits of even replicates about their middle are plain quantiles
        double[] even = new double[99];
        for (int k = 0; k < 99; k++) {
            even[k] = k - 49;
        }
        Interval.Estimated plain = estimated(BootstrapIntervals.corrected(even, new double[] {1, 1, 1}, 0, 0.9));
        assertThat(plain.low()).isCloseTo(-45, within(1e-9));
        assertThat(plain.high()).isCloseTo(45, within(1e-9));
        for (double outside : new double[] {-50, 50}) {
            assertThat(BootstrapIntervals.corrected(even, new double[] {1, 2, 4}, outside, 0.9))
                    .isInstanceOfSatisfying(
                            Interval.NotEstimable.class,
                            none -> assertThat(none.reason()).contains("one side"));
        }
    }

    private static final double[][] LIMITS = {
        {0.312348083256, 0.369026765753}, {0.302632856588, 0.398092831645}, {0.30038811928, 0.410275556733}
    };

    @Test
    void aThirdFiringGoesWhereItTellsMostAboutTheExponent() {
        assertThat(mend(2e6, 6.1e6)).contains("Fire a third at about 3.49 MPa");
        assertThat(mend(3e6, 8.9e6)).contains("Fire at 1.00 MPa: a larger throat.");
    }

    private static String mend(double low, double high) {
        FitPoint a = point(0, Math.log(low), -5, 0, 0);
        FitPoint b = point(1, Math.log(high), -4.6, 0, 0);
        return RateLawFit.fit(List.of(a, b), FitOptions.defaults())
                .match(fitted -> "a law of two points", FitResult.NotFitted::mend);
    }

    @Test
    void aPartOfABurnHasItsEnds() {
        List<InstantaneousRate> along = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            along.add(new InstantaneousRate(i, 1e-3 * i, 1e6 * i, 5e-3));
        }
        BurnCurve part = new BurnCurve("F", along).within(2e6, 4e6);
        assertThat(part.firing()).isEqualTo("F");
        assertThat(part.along()).isEqualTo(along.subList(1, 4));
    }
}
