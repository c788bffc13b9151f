package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static io.burnlaw.ratelaw.PowerLawOracleTest.estimated;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.IntervalMethods.BootstrapIntervals;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What all firings share, carried to the law, and the bootstrap of few and skewed points. */
class SharedErrorAndBootstrapOracleTest {

    private static final String SCRIPT = "general_statistics_checks.py, ";

    private static List<FitPoint> firings() {
        PublishedData data = PublishedData.read("invented_temperatures.csv");
        double[] pressure = data.column("pressure");
        double[] pressureStd = data.column("pressure_std");
        double[] rate = data.column("rate");
        double[] rateStd = data.column("rate_std");
        double[] shared = data.column("shared");
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < pressure.length; i++) {
            points.add(new FitPoint(
                    "p" + i,
                    data.text("firing", i),
                    1e6 * pressure[i],
                    1e6 * pressureStd[i],
                    1e-3 * rate[i],
                    1e-3 * rateStd[i],
                    shared[i]));
        }
        return points;
    }

    private static void assertAt(
            RateLaw law, double pressure, double rate, double scatter, double shared, double low, double high) {
        // 1e-7: where the optimizer stops, and weights that follow the slope are no longer repeated
        assertRelative(law.rate(pressure), rate, 1e-7);
        assertRelative(law.lnStd(pressure), Math.hypot(scatter, shared), 1e-7);
        assertRelative(estimated(law.interval(pressure, 0.9)).low(), low, 1e-7);
        assertRelative(estimated(law.interval(pressure, 0.9)).high(), high, 1e-7);
    }

    @Test
    @Oracle(
            value = "statsmodels 0.15.0 (WLS, known weights) and NumPy: " + SCRIPT + "on invented firings",
            agreement = "law, its errors by scatter and shared, intervals, studentized residuals 1e-7, relative")
    void whatAllFiringsShareIsCarriedToTheLaw() {
        List<FitPoint> points = firings();
        RateLaw law = RateLawFit.fit(
                        points, FitOptions.defaults().with(Weighting.MEASURED).withBootstrap(0, 1))
                .fitted()
                .orElseThrow()
                .law();
        assertRelative(law.exponent(), 0.381172678657, 1e-7);
        assertRelative(law.exponentStd(), Math.hypot(0.00677758141693, 0.00148185166856), 1e-7);
        assertAt(law, 1.5e6, 7.14322736167e-3, 0.00736586878492, 0.00722727922119, 7.02300238864e-3, 7.26551043513e-3);
        assertAt(law, 6.0e6, 12.1166703669e-3, 0.00568562816575, 0.00517299660904, 11.9644365356e-3, 12.2708412004e-3);
        assertRelative(law.residualScatter(), 0.015788263006, 1e-7);
        assertRelative(law.studentized(points.get(2)), 1.9189647138, 1e-6);
        assertRelative(law.studentized(points.get(10)), -2.87191233891, 1e-6);
        assertThat(law.pressureLow()).isBetween(1.09e6, 1.1e6);
        assertThat(law.pressureHigh()).isBetween(7.9e6, 7.91e6);
    }

    @Test
    @Oracle(
            value = "SciPy 1.17.1, stats.bootstrap(method='BCa', 400,000 resamples): " + SCRIPT
                    + "eight invented points, one far off",
            agreement = "each limit to a twentieth of the interval's width")
    void bootstrapOfASkewedFewAgrees() {
        double[] pressure = {1.0, 1.3, 1.8, 2.4, 3.1, 4.0, 5.2, 7.0};
        double[] rate = {5.02, 5.41, 5.98, 6.55, 7.05, 7.61, 8.22, 10.4};
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < rate.length; i++) {
            points.add(new FitPoint("p" + i, "p" + i, 1e6 * pressure[i], 0, 1e-3 * rate[i], 0, 0));
        }
        WeightedSolution solution =
                (WeightedSolution) WeightedFit.fit(points, Weighting.PROPORTIONAL, PressureErrors.NONE);
        BootstrapIntervals intervals =
                new BootstrapIntervals(new Resampling(solution, points), solution.parameters, 40_000, 3, 0.9);
        Interval.Estimated exponent = estimated(intervals.exponent());
        // a 5 % quantile of 40,000 has a standard deviation below a hundredth of the width; few points make steps
        assertThat(exponent.low()).isCloseTo(0.299865026617, within(0.005));
        assertThat(exponent.high()).isCloseTo(0.402853829765, within(0.005));
        double at = Math.log(2e6) - solution.lnPressureUnit;
        Interval.Estimated rateAtTwo = estimated(intervals.lnRate(at));
        double unit = Math.log(1e3) + solution.lnRateUnit;
        assertThat(rateAtTwo.low() + unit).isCloseTo(1.81999922607, within(0.002));
        assertThat(rateAtTwo.high() + unit).isCloseTo(1.85640011901, within(0.002));
    }

    @Test
    void fourFiringsHaveTooFewDrawsForABootstrap() {
        List<FitPoint> points = Campaigns.spread(4, 0.02, new SplittableRandom(1));
        WeightedSolution solution =
                (WeightedSolution) WeightedFit.fit(points, Weighting.PROPORTIONAL, PressureErrors.NONE);
        Interval none =
                new BootstrapIntervals(new Resampling(solution, points), solution.parameters, 100, 3, 0.9).exponent();
        assertThat(none)
                .isInstanceOfSatisfying(
                        Interval.NotEstimable.class,
                        it -> assertThat(it.reason()).contains("fewer than 5"));
    }

    @Test
    void aLawOfTwoPointsHasNoInterval() {
        RateLaw law = MadeLaw.of(-5, 0.4, 2e6, 0.01, 0, 0.01, 0, 0.1, 1e6, 4e6, 2);
        assertThat(law.interval(2e6, 0.95)).isInstanceOf(Interval.NotEstimable.class);
        assertThat(law.exponentInterval(0.95)).isInstanceOf(Interval.NotEstimable.class);
    }
}
