package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Designs whose share of temperature that pressure does not explain is known from orthogonal contrasts. */
class TemperatureObstaclesTest {

    private static final double SIGMA = 2e-3;

    /** Linear and quadratic contrasts of six even steps (Fisher and Yates's tables, from memory): their product is 0. */
    private static final double[] RISING = {-5, -3, -1, 1, 3, 5};

    private static final double[] BOWED = {5, -1, -4, -4, -1, 5};
    private static final double OF_RISING = 70;
    private static final double OF_BOWED = 84;

    /** Six firings of which pressure leaves this share of the temperatures' variance unexplained. */
    private static List<PointAtTemperature> design(double unexplained, double sign) {
        double rising = sign * 10 * Math.sqrt((1 - unexplained) / OF_RISING);
        double bowed = 10 * Math.sqrt(unexplained / OF_BOWED);
        List<PointAtTemperature> points = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            points.add(at(i, 3e6 * Math.exp(0.2 * RISING[i]), 285 + rising * RISING[i] + bowed * BOWED[i]));
        }
        return points;
    }

    private static PointAtTemperature at(int i, double pressure, double temperature) {
        double rate = Campaigns.truth(pressure) * Math.exp(SIGMA * (temperature - 294));
        return new PointAtTemperature(new FitPoint("f" + i, "f" + i, pressure, 0, rate, 0, 0), temperature);
    }

    private static TemperatureResult fit(List<PointAtTemperature> points) {
        return TemperatureFit.fit(points, 294, Weighting.PROPORTIONAL, 0.95);
    }

    private static void isRefused(List<PointAtTemperature> points, String words) {
        assertThat(fit(points))
                .isInstanceOfSatisfying(
                        TemperatureResult.NotEstimated.class,
                        none -> assertThat(none.reason()).contains(words));
    }

    private static void givesSigma(List<PointAtTemperature> points) {
        // 1e-8: the points lie on the plane, and a fiftieth of the variance is left to find it by
        assertThat(fit(points).estimated().orElseThrow().sigmaP()).isCloseTo(SIGMA, within(1e-8));
    }

    @Test
    void aFiftiethOfTheVarianceMustBeLeft() {
        for (double sign : new double[] {1, -1}) {
            isRefused(design(0.0199, sign), "cannot be separated");
            givesSigma(design(0.0201, sign));
            givesSigma(design(0.5, sign));
        }
    }

    @Test
    void theShareIsThatOfTheDesignInAnyOrder() {
        List<PointAtTemperature> barely = new ArrayList<>(design(0.0201, 1));
        List<PointAtTemperature> notQuite = new ArrayList<>(design(0.0199, 1));
        for (int turn = 0; turn < 6; turn++) {
            barely.add(barely.remove(0));
            notQuite.add(notQuite.remove(0));
            givesSigma(barely);
            isRefused(notQuite, "cannot be separated");
        }
    }

    @Test
    void firingsAtOnePressureGiveNoSensitivity() {
        List<PointAtTemperature> one = new ArrayList<>();
        List<PointAtTemperature> two = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            one.add(at(i, 3e6 * (i % 2 == 0 ? 1 : 1.0199), 280 + 5 * (i / 2)));
            two.add(at(i, 3e6 * (i % 2 == 0 ? 1 : 1.0201), 280 + 5 * (i / 2)));
        }
        isRefused(one, "All firings were at one pressure");
        givesSigma(two);
    }

    @Test
    void temperaturesThreeDegreesApartAreTwo() {
        List<PointAtTemperature> close = new ArrayList<>();
        List<PointAtTemperature> apart = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            close.add(at(i, 2e6 * (1 + i), i % 3 == 0 ? 290 : 292.99));
            apart.add(at(i, 2e6 * (1 + i), i % 3 == 0 ? 290 : 293));
        }
        isRefused(close, "within 3.0 K");
        // four firings are enough
        givesSigma(apart);
    }

    @Test
    void whatWouldMendItDependsOnHowFarTheTemperaturesReach() {
        String near = ((TemperatureResult.NotEstimated) fit(List.of(at(0, 2e6, 294), at(1, 4e6, 303.9)))).mend();
        String far = ((TemperatureResult.NotEstimated) fit(List.of(at(0, 2e6, 284), at(1, 4e6, 294)))).mend();
        assertThat(near).startsWith("Fire twice at each of two pressures");
        assertThat(far).startsWith("Fire at a pressure already fired");
    }
}
