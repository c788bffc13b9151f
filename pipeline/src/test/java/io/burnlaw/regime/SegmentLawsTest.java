package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.RateLawFit;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Where there is one law, the search's is that of the fit, with all of its errors. */
class SegmentLawsTest {

    private static List<FitPoint> points() {
        List<FitPoint> points = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(21);
        for (int i = 0; i < 14; i++) {
            double pressure = 1e6 * Math.pow(10, i * i / 169.0);
            double std = i % 3 == 0 ? 0.012 : 0.03;
            double rate = 5e-3 * Math.pow(pressure / 1e6, 0.4) * Math.exp(std * random.nextGaussian());
            double systematic = i < 5 ? 0.004 : 0.008;
            points.add(new FitPoint("p" + i, "p" + i, pressure, 0, rate, std * rate, systematic));
        }
        return points;
    }

    @ParameterizedTest
    @EnumSource(
            value = Weighting.class,
            names = {"PROPORTIONAL", "MEASURED"})
    void oneLawHasTheErrorsOfTheFit(Weighting weighting) {
        List<FitPoint> points = points();
        RateLaw searched = RegimeSearch.search(points, RegimeOptions.defaults(3).withWeighting(weighting))
                .laws()
                .get(0);
        RateLaw fitted = ((FitResult.Fitted) RateLawFit.fit(
                        points, FitOptions.defaults().with(weighting).withBootstrap(0, 1)))
                .law();
        assertThat(searched.points()).isEqualTo(14);
        assertThat(searched.pressureLow()).isEqualTo(fitted.pressureLow());
        assertThat(searched.pressureHigh()).isEqualTo(fitted.pressureHigh());
        assertThat(searched.commonError().exponent())
                .isCloseTo(fitted.commonError().exponent(), within(1e-9));
        for (double pressure : new double[] {1e6, 1.7e6, 3.3e6, 1e7}) {
            // the same straight line between logarithms, by an optimizer there and in closed form here
            assertThat(searched.rate(pressure) / fitted.rate(pressure)).isCloseTo(1, within(1e-8));
            assertThat(searched.lnStd(pressure) / fitted.lnStd(pressure)).isCloseTo(1, within(1e-6));
            assertThat(searched.scatterAt(pressure) / fitted.scatterAt(pressure))
                    .isCloseTo(1, within(1e-6));
        }
    }
}
