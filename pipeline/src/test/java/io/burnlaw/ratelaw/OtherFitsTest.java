package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitResult.OtherFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Fits that are reported beside the published one, and what is said of a law. */
class OtherFitsTest {

    private static final double[] PRESSURE = {1.0, 1.3, 1.8, 2.4, 3.1, 4.0, 5.2, 7.0};
    private static final double[] RATE = {5.02, 5.41, 5.98, 6.55, 7.05, 7.61, 8.22, 10.4};

    private static List<FitPoint> points(double pressureStd) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < RATE.length; i++) {
            double pressure = 1e6 * PRESSURE[i];
            points.add(new FitPoint("p" + i, "p" + i, pressure, pressureStd * pressure, 1e-3 * RATE[i], 0, 0));
        }
        return points;
    }

    private static FitResult.Fitted fit(List<FitPoint> points, FitOptions options) {
        return RateLawFit.fit(points, options.withRobust(true).withBootstrap(0, 1))
                .fitted()
                .orElseThrow();
    }

    private static OtherFit other(FitResult.Fitted fit, String name) {
        return fit.others().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    @Oracle(
            value = "statsmodels 0.15.0 (RLM, Huber at 1.345), covariance by Venables and Ripley (2002): "
                    + "general_statistics_checks.py, eight invented points, one far off",
            agreement = "exponent, rates and their standard errors 1e-6, relative; the weight as printed")
    void theRobustFitOfASkewedFewAgrees() {
        FitResult.Fitted fit = fit(points(0), FitOptions.defaults());
        assertRelative(fit.law().exponent(), 0.344194456122, 1e-9);
        assertRelative(fit.law().exponentStd(), 0.025141184509, 1e-9);
        OtherFit huber = other(fit, "huber");
        // the rounds of the scale end at 1e-12 of the parameters
        assertRelative(huber.law().exponent(), 0.303210164787, 1e-6);
        assertRelative(huber.law().exponentStd(), 0.00220594556916, 1e-6);
        assertRelative(huber.law().rate(1.2e6), 5.29232956273e-3, 1e-6);
        assertRelative(huber.law().lnStd(1.2e6), 0.00224627610609, 1e-6);
        assertRelative(huber.law().rate(6e6), 8.62147733538e-3, 1e-6);
        assertRelative(huber.law().lnStd(6e6), 0.00227160250547, 1e-6);
        double reference = huber.law().referencePressure();
        assertThat(huber.sentence())
                .startsWith("The exponent is 0.303, −0.041 (1.6 standard uncertainties) from the published one")
                .contains(String.format(
                                Locale.ROOT,
                                "differs by %+.2f %%",
                                100 * (huber.law().rate(reference) / fit.law().rate(reference) - 1))
                        .replace('-', '−'))
                .endsWith("Points with less than full weight: p7 (0.03).");
    }

    @Test
    void eachOtherFitIsTheFitWithItsOptions() {
        FitResult.Fitted fit = fit(points(0.02), FitOptions.defaults());
        assertThat(fit.others())
                .extracting(OtherFit::name)
                .containsExactly("huber", "weighting-constant", "orthogonal-distance");
        OtherFit constant = other(fit, "weighting-constant");
        assertSame(constant, FitOptions.defaults().with(Weighting.CONSTANT));
        assertSame(other(fit, "orthogonal-distance"), FitOptions.defaults().with(PressureErrors.ORTHOGONAL_DISTANCE));
        RateLaw law = constant.law();
        double shift = law.exponent() - fit.law().exponent();
        double percent = 100 * (law.rateAtReference() / fit.law().rate(law.referencePressure()) - 1);
        assertThat(constant.sentence())
                .contains(String.format(Locale.ROOT, "%.3f, %+.3f (", law.exponent(), shift))
                .contains(String.format(
                        Locale.ROOT, "at %.1f MPa differs by %+.2f %%", law.referencePressure() / 1e6, percent));
        assertThat(fit(points(0), FitOptions.defaults().with(Weighting.CONSTANT))
                        .others())
                .extracting(OtherFit::name)
                .containsExactly("huber", "weighting-proportional");
    }

    private static void assertSame(OtherFit other, FitOptions options) {
        RateLaw law = RateLawFit.law(points(0.02), options).orElseThrow();
        assertThat(other.law()).isEqualTo(law);
        assertThat(other.exponent()).isEqualTo(law.exponentInterval(0.95));
        assertThat(other.coefficient()).isEqualTo(law.interval(1e6, 0.95));
    }

    @Test
    void aFitThatDiffersByNothingSaysSo() {
        List<FitPoint> points = Campaigns.spread(9, 1e-4, new SplittableRandom(3));
        OtherFit constant = other(fit(points, FitOptions.defaults()), "weighting-constant");
        assertThat(constant.sentence()).contains("The exponent is 0.420");
        OtherFit huber = other(fit(exactBut(points), FitOptions.defaults()), "huber");
        assertThat(huber.sentence()).contains("nothing differs from the published law", "All points have full weight");
    }

    /** Residuals of one size and both signs, which a robust fit has no reason to hold back. */
    private static List<FitPoint> exactBut(List<FitPoint> points) {
        List<FitPoint> even = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            FitPoint p = points.get(i);
            double sign = i == 0 || i == 3 || i == 5 || i == 6 ? 1 : -1;
            even.add(new FitPoint(
                    p.id(), p.cluster(), p.pressure(), 0, Campaigns.truth(p.pressure()) * Math.exp(0.01 * sign), 0, 0));
        }
        return even;
    }

    private static List<FindingCode> codes(List<FitPoint> points) {
        return fit(points, FitOptions.defaults()).findings().stream()
                .map(Finding::code)
                .toList();
    }

    @Test
    void whatIsToldOfALawRestsOnItsNumbers() {
        FitResult.Fitted fit = fit(points(0), FitOptions.defaults());
        Finding outlier = fit.findings().stream()
                .filter(each -> each.code() == FindingCode.OUTLIER)
                .findFirst()
                .orElseThrow();
        double off = 100 * (10.4e-3 / fit.law().rate(7e6) - 1);
        assertThat(outlier.message()).contains(String.format(Locale.ROOT, "Point p7 is %+.1f %% off the law", off));
        assertThat(codes(Campaigns.spread(5, 0.01, new SplittableRandom(6)))).doesNotContain(FindingCode.FEW_POINTS);
        assertThat(codes(Campaigns.spread(4, 0.01, new SplittableRandom(6)))).contains(FindingCode.FEW_POINTS);
        assertThat(codes(points(0).subList(0, 5))).doesNotContain(FindingCode.NARROW_RANGE);
        assertThat(codes(points(0).subList(0, 4))).contains(FindingCode.NARROW_RANGE);
        assertThat(codes(points(0))).doesNotContain(FindingCode.UNSTABLE_EXPONENT, FindingCode.LACK_OF_FIT);
    }
}
