package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.UnitPairs.CoefficientIn;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class UnitPairsTest {

    private static final RateLaw LAW = RateLawFit.fit(
                    Campaigns.spread(8, 0.03, new SplittableRandom(31)),
                    FitOptions.defaults().withBootstrap(0, 1))
            .fitted()
            .orElseThrow()
            .law();

    @Test
    void everyPairGivesTheSameRateAndTheSameUncertainty() {
        for (CoefficientIn pair : UnitPairs.of(LAW, 0.95)) {
            for (double pressure : new double[] {0.5e6, 2e6, 9e6}) {
                double p = pair.pressureUnit().fromSi(pressure);
                double rate = pair.rateUnit().toSi(pair.coefficient() * Math.pow(p, pair.exponent()));
                assertThat(rate).isCloseTo(LAW.rate(pressure), within(1e-12 * LAW.rate(pressure)));
                double x = Math.log(p);
                double variance = pair.lnVariance() + 2 * x * pair.covariance() + x * x * pair.exponentVariance();
                // Far from the data the three terms nearly cancel: 1e-9 of a coefficient's variance is left.
                assertThat(Math.sqrt(variance)).isCloseTo(LAW.lnStd(pressure), within(1e-6));
            }
        }
    }

    @Test
    void theIntervalIsThatOfTheRateAtOneUnitOfPressure() {
        CoefficientIn pounds = UnitPairs.in(LAW, Unit.POUND_PER_SQUARE_INCH, Unit.INCH_PER_SECOND, 0.95);
        Interval.Estimated there = LAW.interval(Unit.POUND_PER_SQUARE_INCH.toSi(1), 0.95)
                .estimated()
                .orElseThrow();
        assertThat(pounds.interval().estimated().orElseThrow().high() * 0.0254)
                .isCloseTo(there.high(), within(1e-12 * there.high()));
    }

    @Test
    @Oracle(
            value =
                    "Shuttle booster propellant: 0.368 in/s at 625 psia with n = 0.35 is 5.60586 mm/s at 1 MPa (recalled)",
            agreement = "to the digits given",
            fromMemory = true)
    void coefficientOfAPublishedLawIsTheSameInBothSystems() {
        double pressure = Unit.POUND_PER_SQUARE_INCH.toSi(625);
        double ln = Math.log(Unit.INCH_PER_SECOND.toSi(0.368));
        RateLaw law = MadeLaw.of(ln, 0.35, pressure, 0, 0, 0, 3, 0, pressure / 2, pressure * 2, 5);
        assertThat(UnitPairs.in(law, Unit.MEGAPASCAL, Unit.MILLIMETRE_PER_SECOND, 0.95)
                        .coefficient())
                .isCloseTo(5.60586, within(5e-6));
        assertThat(UnitPairs.in(law, Unit.POUND_PER_SQUARE_INCH, Unit.INCH_PER_SECOND, 0.95)
                        .coefficient())
                .isCloseTo(0.0386625, within(5e-8));
    }
}
