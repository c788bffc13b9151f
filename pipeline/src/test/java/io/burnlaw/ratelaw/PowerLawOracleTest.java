package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import org.junit.jupiter.api.Test;

class PowerLawOracleTest {

    private static final FitOptions CONSTANT = FitOptions.defaults().with(Weighting.CONSTANT);

    @Test
    @Oracle(
            value = "NIST StRD, nonlinear regression, DanWood (y = b1·x^b2, 6 points): certified values",
            agreement = "parameters 1e-8, standard errors and residual scatter 1e-8, relative")
    void parametersAndStandardErrorsAgreeWithDanWood() {
        FitResult.Fitted fit = fit("nist_danwood.csv", "x", "y", CONSTANT);
        RateLaw law = fit.law();
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
            value = "R 4.2.2 lm(log(y) ~ log(x)) on NIST StRD DanWood",
            agreement = "parameters and standard errors 1e-12, relative")
    void proportionalWeightsAreTheLineThroughTheLogarithms() {
        RateLaw law = fit("nist_danwood.csv", "x", "y", FitOptions.defaults()).law();
        // Printed with 15 digits.
        assertRelative(law.rate(1), 0.749945347147907, 1e-12);
        assertRelative(law.exponent(), 3.91720563648152, 1e-12);
        assertRelative(law.lnStd(1), 0.0178836513788037, 1e-10);
        assertRelative(law.exponentStd(), 0.0421987655476502, 1e-10);
        assertRelative(law.residualScatter(), 0.00822799676228094, 1e-10);
        Interval.Estimated exponent = law.exponentInterval(0.95).estimated().orElseThrow();
        assertRelative(exponent.low(), 3.80004308043, 1e-11);
        assertRelative(exponent.high(), 4.034368192532, 1e-11);
    }

    static FitResult.Fitted fit(String file, String x, String y, FitOptions options) {
        return RateLawFit.fit(PublishedData.read(file).points(x, y), options)
                .fitted()
                .orElseThrow();
    }

    static void assertRelative(double actual, double expected, double tolerance) {
        assertThat(actual).isCloseTo(expected, within(Math.abs(expected) * tolerance));
    }
}
