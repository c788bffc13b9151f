package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitResult.LackOfFit;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.FitResult.Residual;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class PowerLawOracleTest {

    private static final FitOptions PROPORTIONAL = FitOptions.defaults().withBootstrap(0, 1);
    private static final FitOptions CONSTANT = PROPORTIONAL.with(Weighting.CONSTANT);

    @Test
    @Oracle(
            value = "NIST StRD, nonlinear regression, DanWood (y = b1·x^b2, 6 points): certified values",
            agreement = "parameters, standard errors and residual scatter 1e-8, relative")
    void parametersAndStandardErrorsAgreeWithDanWood() {
        RateLaw law = fit("nist_danwood.csv", "x", "y", CONSTANT).law();
        // Certified to 11 digits; the search stops some 1e-11 away.
        assertRelative(law.rate(1), 7.6886226176E-01, 1e-8);
        assertRelative(law.exponent(), 3.8604055871E+00, 1e-8);
        assertRelative(law.rate(1) * law.lnStd(1), 1.8281973860E-02, 1e-8);
        assertRelative(law.exponentStd(), 5.1726610913E-02, 1e-8);
        assertRelative(law.residualScatter() * law.rateAtReference(), 3.2853114039E-02, 1e-8);
        assertThat(law.degreesOfFreedom()).isEqualTo(4);
    }

    @Test
    @Oracle(
            value = "R 4.2.2, confint of nls on NIST StRD DanWood: limits from the covariance and from the profile",
            agreement = "exponent from the covariance 1e-8; coefficient and exponent from the profile 1e-7, relative")
    void limitsFromCovarianceAndProfileAgreeOnDanWood() {
        FitResult.Fitted fit = fit("nist_danwood.csv", "x", "y", CONSTANT);
        Interval.Estimated wald = estimated(fit.law().exponentInterval(0.95));
        assertRelative(wald.low(), 3.716789491398553, 1e-8);
        assertRelative(wald.high(), 4.004021682753561, 1e-8);
        MethodIntervals profile = method(fit, Interval.Method.PROFILE);
        // Printed with ten digits. The profile does not care in which unit the coefficient is: at x = 1 it is b1.
        assertRelative(estimated(profile.exponent()).low(), 3.718058657, 1e-8);
        assertRelative(estimated(profile.exponent()).high(), 4.004183157, 1e-8);
        FitResult.Fitted megapascals = RateLawFit.fit(
                        PublishedData.read("nist_danwood.csv").points("x", "y").stream()
                                .map(p -> new FitPoint(
                                        p.id(), p.cluster(), Unit.MEGAPASCAL.toSi(p.pressure()), 0, p.rate(), 0, 0))
                                .toList(),
                        CONSTANT)
                .fitted()
                .orElseThrow();
        Interval.Estimated coefficient =
                estimated(method(megapascals, Interval.Method.PROFILE).coefficient());
        assertRelative(coefficient.low(), 0.719607163, 1e-8);
        assertRelative(coefficient.high(), 0.820769803, 1e-8);
    }

    @Test
    @Oracle(
            value = "R 4.2.2, lm(log(y) ~ log(x)) on NIST StRD DanWood",
            agreement = "parameters 1e-12, standard errors, scatter and limits 1e-10, relative")
    void proportionalWeightsAreTheLineThroughTheLogarithms() {
        RateLaw law = fit("nist_danwood.csv", "x", "y", PROPORTIONAL).law();
        // Printed with 12 to 15 digits.
        assertRelative(law.rate(1), 0.749945347147907, 1e-12);
        assertRelative(law.exponent(), 3.91720563648152, 1e-12);
        assertRelative(law.lnStd(1), 0.0178836513788037, 1e-10);
        assertRelative(law.exponentStd(), 0.0421987655476502, 1e-10);
        assertRelative(law.residualScatter(), 0.00822799676228094, 1e-10);
        Interval.Estimated exponent = estimated(law.exponentInterval(0.95));
        assertRelative(exponent.low(), 3.80004308043, 1e-10);
        assertRelative(exponent.high(), 4.034368192532, 1e-10);
    }

    @Test
    @Oracle(
            value =
                    "Allison and Cicchetti (1976), brain over body weight of 62 mammals, R MASS::mammals, by R 4.2.2 lm",
            agreement = "exponent, coefficient, standard errors, scatter and limits 1e-8, relative")
    void allometricLawOfMammalsAgrees() {
        RateLaw law = mammals().law();
        // Printed with ten digits.
        assertRelative(law.exponent(), 0.7516859362, 1e-9);
        assertRelative(law.exponentStd(), 0.0284635598, 1e-8);
        assertRelative(Math.log(law.rate(1)), 2.134788676765, 1e-9);
        assertRelative(law.lnStd(1), 0.0960433879870, 1e-9);
        assertRelative(law.residualScatter(), 0.301528371 * Math.log(10), 1e-8);
        assertRelative(estimated(law.exponentInterval(0.95)).low(), 0.694750339491, 1e-8);
        assertRelative(estimated(law.exponentInterval(0.95)).high(), 0.808621532993, 1e-8);
        assertThat(law.degreesOfFreedom()).isEqualTo(60);
    }

    @Test
    @Oracle(
            value =
                    "statsmodels 0.15.0, OLS and OLSInfluence on the mammals: bands, leverage, residuals, Cook's distance",
            agreement = "1e-9 relative")
    void bandsAndResidualsOfMammalsAgree() {
        FitResult.Fitted fit = mammals();
        // Printed with twelve digits.
        assertResidual(fit.residuals().get(0), 0.0161525078141, 1.0805395349, 1.08207722928, 0.00958436852458);
        assertResidual(fit.residuals().get(18), 0.0872508724623, 0.609739318745, 0.606518834656, 0.017769563454);
        assertResidual(fit.residuals().get(31), 0.029207989844, 2.84804282875, 3.03694080812, 0.122022104732);
        double at = Math.exp(3);
        assertRelative(Math.log(estimated(fit.law().interval(at, 0.95)).low()), 4.18967610359, 1e-9);
        assertRelative(Math.log(estimated(fit.law().interval(at, 0.95)).high()), 4.59001686739, 1e-9);
        assertRelative(Math.log(estimated(fit.law().predict(at, 0.95)).low()), 2.98669889027, 1e-9);
        assertRelative(Math.log(estimated(fit.law().predict(at, 0.95)).high()), 5.79299408071, 1e-9);
    }

    @Test
    @Oracle(
            value = "SciPy 1.17.1, stats.bootstrap(method='BCa', 200,000 resamples) of the mammals' exponent",
            agreement = "each limit to 0.0015, three standard deviations of both random quantiles")
    void bootstrapOfMammalsAgrees() {
        FitResult.Fitted fit = RateLawFit.fit(
                        PublishedData.read("mammals_loglog.csv").points("body_kg", "brain_g"),
                        PROPORTIONAL.withBootstrap(20_000, 7))
                .fitted()
                .orElseThrow();
        Interval.Estimated exponent =
                estimated(method(fit, Interval.Method.BOOTSTRAP_BCA).exponent());
        // A 2.5 % quantile of 20,000 of spread 0.023 has a standard deviation of 0.023/0.058·sqrt(0.025/20,000) =
        // 0.0004.
        assertThat(exponent.low()).isCloseTo(0.708690092922, within(0.0015));
        assertThat(exponent.high()).isCloseTo(0.799374275811, within(0.0015));
    }

    @Test
    @Oracle(
            value = "statsmodels 0.15.0, WLS with known scale, on Pearson's data with York's weights in y only",
            agreement = "parameters and standard errors 1e-9, relative")
    void measuredWeightsTakeThePointsAtTheirWord() {
        PublishedData data = PublishedData.read("pearson_york.csv");
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < data.column("x").length; i++) {
            double rate = Math.exp(data.column("y")[i]);
            points.add(new FitPoint(
                    "p" + i,
                    "p" + i,
                    Math.exp(data.column("x")[i]),
                    0,
                    rate,
                    rate / Math.sqrt(data.column("wy")[i]),
                    0));
        }
        RateLaw law = RateLawFit.fit(points, PROPORTIONAL.with(Weighting.MEASURED))
                .fitted()
                .orElseThrow()
                .law();
        assertRelative(Math.log(law.rate(1)), 6.10010931667, 1e-9);
        assertRelative(law.exponent(), -0.610812956584, 1e-9);
        assertRelative(law.lnStd(1), 0.204662685811, 1e-9);
        assertRelative(law.exponentStd(), 0.0300874488372, 1e-9);
    }

    @Test
    @Oracle(
            value = "statsmodels 0.15.0, compare_f_test of a line against the groups' means, invented data",
            agreement = "F and p 1e-8, relative")
    void lackOfFitAgreesWithAnalysisOfVariance() {
        LackOfFit test =
                fit("replicated_line.csv", "x", "y", PROPORTIONAL).lackOfFit().orElseThrow();
        assertRelative(test.statistic(), 7.26204405403, 1e-8);
        assertRelative(test.pValue(), 0.0159136967495, 1e-8);
        assertThat(test.lackDegreesOfFreedom()).isEqualTo(2);
        assertThat(test.pureDegreesOfFreedom()).isEqualTo(8);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "student_t_critical.csv", numLinesToSkip = 1, useHeadersInDisplayName = false)
    @Oracle(value = "R 4.2.2, qt()", agreement = "to the nine decimals printed")
    void limitsAreStudentsForTheLawsDegreesOfFreedom(int freedom, double t90, double t95, double t99) {
        RateLaw law = MadeLaw.of(0, 0, 1, 1, 0, 1, freedom, 1, 1, 2, freedom + 2);
        assertThat(estimated(law.exponentInterval(0.90)).high()).isCloseTo(t90, within(6e-10));
        assertThat(estimated(law.exponentInterval(0.95)).high()).isCloseTo(t95, within(6e-10));
        assertThat(estimated(law.exponentInterval(0.99)).high()).isCloseTo(t99, within(6e-10));
    }

    private static FitResult.Fitted mammals() {
        return fit("mammals_loglog.csv", "body_kg", "brain_g", PROPORTIONAL);
    }

    private static void assertResidual(Residual r, double leverage, double internal, double external, double cook) {
        assertRelative(r.leverage(), leverage, 1e-9);
        assertRelative(r.studentized(), internal, 1e-9);
        assertRelative(r.externallyStudentized(), external, 1e-9);
        assertRelative(r.influence(), cook, 1e-9);
    }

    static FitResult.Fitted fit(String file, String x, String y, FitOptions options) {
        return RateLawFit.fit(PublishedData.read(file).points(x, y), options)
                .fitted()
                .orElseThrow();
    }

    static MethodIntervals method(FitResult.Fitted fit, Interval.Method method) {
        return fit.intervals().stream()
                .filter(each -> each.method() == method)
                .findFirst()
                .orElseThrow();
    }

    static Interval.Estimated estimated(Interval interval) {
        return interval.estimated().orElseThrow();
    }

    static void assertRelative(double actual, double expected, double tolerance) {
        assertThat(actual).isCloseTo(expected, within(Math.abs(expected) * tolerance));
    }
}
