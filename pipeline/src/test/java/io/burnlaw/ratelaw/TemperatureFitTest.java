package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TemperatureFitTest {

    private static final double SIGMA = 2.5e-3;

    @Test
    void pointsOnALawGiveBackBothSensitivities() {
        TemperatureResult.Estimated found =
                fit(campaign(10, 0, 278, 308, 1)).estimated().orElseThrow();
        assertThat(found.sigmaP()).isCloseTo(SIGMA, within(1e-10));
        assertThat(found.piK()).isCloseTo(SIGMA / (1 - Campaigns.EXPONENT), within(1e-9));
        assertThat(found.law().exponent()).isCloseTo(Campaigns.EXPONENT, within(1e-9));
        assertThat(found.law().coefficient()).isCloseTo(Campaigns.RATE_AT_MEGAPASCAL, within(1e-11));
        assertThat(found.referred())
                .allSatisfy(
                        p -> assertThat(p.rate()).isCloseTo(Campaigns.truth(p.pressure()), within(1e-10 * p.rate())));
    }

    @Test
    void theTruthLiesInTheIntervalsAsOftenAsTheySay() {
        int within = 0;
        int withinPi = 0;
        int runs = 1000;
        for (int seed = 0; seed < runs; seed++) {
            TemperatureResult.Estimated found =
                    fit(campaign(8, 0.02, 278, 308, seed)).estimated().orElseThrow();
            within += holds(found.sigmaPInterval(), SIGMA) ? 1 : 0;
            withinPi += holds(found.piKInterval(), SIGMA / (1 - Campaigns.EXPONENT)) ? 1 : 0;
        }
        // Four standard deviations of a count of 95 %: 4·sqrt(0.95·0.05/1000) = 2.8 %.
        assertThat(within / (double) runs).isCloseTo(0.95, within(0.028));
        assertThat(withinPi / (double) runs).isCloseTo(0.95, within(0.028));
    }

    @Test
    void oneTemperatureSaysNothing() {
        TemperatureResult.NotEstimated found = (TemperatureResult.NotEstimated) fit(campaign(8, 0.02, 294, 295, 1));
        assertThat(found.reason()).contains("within 1.0 K");
        assertThat(found.mend()).contains("20 K");
    }

    @Test
    void temperatureThatRisesWithPressureCannotBeToldApartFromIt() {
        List<PointAtTemperature> points = new ArrayList<>();
        List<FitPoint> plain = Campaigns.spread(8, 0.02, new SplittableRandom(2));
        for (int i = 0; i < plain.size(); i++) {
            points.add(new PointAtTemperature(plain.get(i), 280 + 4 * i));
        }
        assertThat(((TemperatureResult.NotEstimated) fit(points)).reason()).contains("cannot be separated");
    }

    @Test
    void threeFiringsAreTooFew() {
        assertThat(((TemperatureResult.NotEstimated) fit(campaign(3, 0.02, 278, 308, 1))).reason())
                .contains("3 independent firings");
    }

    @Test
    void whereTheExponentMayBeOneThePressuresSensitivityHasNoLimit() {
        List<PointAtTemperature> steep = campaign(6, 0.2, 278, 308, 4).stream()
                .map(p -> new PointAtTemperature(
                        new FitPoint(
                                p.point().id(),
                                p.point().cluster(),
                                p.point().pressure(),
                                0,
                                p.point().rate() * Math.sqrt(p.point().pressure() / 1e6),
                                0,
                                0),
                        p.temperature()))
                .toList();
        TemperatureResult.Estimated found = fit(steep).estimated().orElseThrow();
        assertThat(found.piKInterval())
                .isInstanceOfSatisfying(
                        Interval.NotEstimable.class,
                        none -> assertThat(none.reason()).contains("reaches 1"));
    }

    private static boolean holds(Interval interval, double truth) {
        return interval.estimated()
                .filter(e -> e.low() <= truth && truth <= e.high())
                .isPresent();
    }

    private static TemperatureResult fit(List<PointAtTemperature> points) {
        return TemperatureFit.fit(points, 294, Weighting.PROPORTIONAL, 0.95);
    }

    private static List<PointAtTemperature> campaign(int count, double scatter, double cold, double warm, long seed) {
        List<FitPoint> points = Campaigns.spread(count, scatter, new SplittableRandom(seed));
        List<PointAtTemperature> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            FitPoint p = points.get(i);
            double temperature = i % 2 == 0 ? cold : warm;
            double factor = Math.exp(SIGMA * (temperature - 294));
            all.add(new PointAtTemperature(
                    new FitPoint(p.id(), p.cluster(), p.pressure(), 0, p.rate() * factor, 0, 0), temperature));
        }
        return all;
    }
}
