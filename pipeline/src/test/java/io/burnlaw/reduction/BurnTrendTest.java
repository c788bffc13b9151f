package io.burnlaw.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.reduction.balance.LocalExponent;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BurnTrendTest {

    private static final double WEB = 0.012;

    /** Rates of an arched burn at n = 0.35, with a factor that changes along the web, and white noise of ln r. */
    private static List<InstantaneousRate> burn(
            java.util.function.DoubleUnaryOperator factor, double noise, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<InstantaneousRate> along = new ArrayList<>();
        for (int i = 0; i < 160; i++) {
            double share = 0.07 + 0.83 * i / 159;
            double pressure = 3e6 * (1 + 0.4 * share * (1 - share)) * (1 - 0.1 * share);
            double rate = 6e-3
                    * Math.pow(pressure / 1e6, 0.35)
                    * factor.applyAsDouble(share)
                    * Math.exp(noise * random.nextGaussian());
            along.add(new InstantaneousRate(share, share * WEB, pressure, rate));
        }
        return along;
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.2, -0.05, 0, 0.05, 0.2})
    void anEvenDriftComesBackWithTheExponentOfTheBurn(double drift) {
        BurnTrend trend = BurnTrend.of(burn(x -> Math.exp(drift * x), 0, 1), at -> at.web() / WEB);
        // The prior of 0.4 ± 0.25 pulls a little: residuals are taken as 0.1 % at least.
        assertEquals(drift, trend.shift(), 0.001);
        assertEquals(0.35, trend.exponent(), 0.01);
    }

    @Test
    void aLevelBurnLeavesTheExponentToThePrior() {
        List<InstantaneousRate> level = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            level.add(new InstantaneousRate(i, i * WEB / 100, 3e6, 8e-3));
        }
        BurnTrend trend = BurnTrend.of(level, at -> at.web() / WEB);
        assertEquals(LocalExponent.USUAL, trend.exponent(), 1e-9);
        assertEquals(0, trend.shift(), 1e-9);
    }

    @Test
    void theUncertaintyOfTheDriftIsThatOfItsScatter() {
        // White noise on each of 160 rates counts here as on 18 independent ones: u is too large by sqrt(160/18) = 3.
        double square = 0;
        double stated = 0;
        for (int seed = 0; seed < 300; seed++) {
            BurnTrend trend = BurnTrend.of(burn(x -> 1, 0.01, seed), at -> at.web() / WEB);
            square += trend.shift() * trend.shift() / 300;
            stated += trend.shiftStd() / 300;
        }
        // the standard deviation of 300 is known to 4 %; the ratio also holds the pull of the prior
        assertEquals(Math.sqrt(160.0 / BurnTrend.INDEPENDENT), stated / Math.sqrt(square), 0.45);
    }

    @Test
    void neitherUnitsNorTheSpeedOfTheBurnMatter() {
        List<InstantaneousRate> burn = burn(x -> Math.exp(-0.06 * x), 0.003, 5);
        List<InstantaneousRate> other = burn.stream()
                .map(at -> new InstantaneousRate(10 * at.time(), at.web(), 7 * at.pressure(), 0.1 * at.rate()))
                .toList();
        BurnTrend one = BurnTrend.of(burn, at -> at.web() / WEB);
        BurnTrend two = BurnTrend.of(other, at -> at.web() / WEB);
        assertEquals(one.shift(), two.shift(), 1e-12);
        assertEquals(one.shiftStd(), two.shiftStd(), 1e-12);
    }

    @Test
    void aStartThatDiesAwayIsNoChangeOfTheThroatAndTheOtherWayRound() {
        List<InstantaneousRate> erosive = burn(x -> 1 + 0.15 * Math.exp(-x / 0.1), 0.002, 6);
        assertTrue(ThroatChange.of(erosive, WEB).isEmpty());
        ErosiveHump hump = ErosiveHump.of(erosive, WEB).orElseThrow();
        // The nearest of the three ways to fade is 0.12: its excess at the start is a little lower.
        assertEquals(0.15, hump.excess(), 0.02);
        List<InstantaneousRate> eroding = burn(x -> 1 / (1 + 0.06 * x), 0.002, 7);
        assertTrue(ErosiveHump.of(eroding, WEB).isEmpty());
        // 0.5 %: noise of 0.2 % on each rate
        assertEquals(0.06, ThroatChange.of(eroding, WEB).orElseThrow().area(), 0.005);
    }

    @Test
    void aCurvedLawIsNeither() {
        List<InstantaneousRate> curved = burn(x -> 1, 0.001, 8).stream()
                .map(at -> new InstantaneousRate(
                        at.time(),
                        at.web(),
                        at.pressure(),
                        at.rate() * Math.exp(4 * Math.pow(Math.log(at.pressure() / 3e6), 2))))
                .toList();
        assertTrue(ThroatChange.of(curved, WEB).isEmpty());
        assertTrue(ErosiveHump.of(curved, WEB).isEmpty());
    }
}
