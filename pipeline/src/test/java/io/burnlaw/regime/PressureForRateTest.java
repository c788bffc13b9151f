package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PressureForRateTest {

    private static final PressureLimit NO_LIMIT = PressureLimit.UNSTATED;

    private static Regimes oneLaw(double exponent) {
        return RegimeSearch.search(
                Simulated.points(10, 1e5, 4e6, Simulated.broken(1e6, exponent, exponent, 1), 0.01, 3),
                RegimeOptions.defaults(1));
    }

    private static Regimes slowBelow() {
        return RegimeSearch.search(
                Simulated.points(20, 2e5, 8e6, Simulated.broken(1e6, 0.4, 0.4, 3), 0.02, 6), RegimeOptions.defaults(7));
    }

    private static FasterAnswer one(Regimes regimes, double base, PressureLimit limit, double factor) {
        return PressureForRate.answer(regimes, base, limit, List.of(factor)).get(0);
    }

    @Test
    void withinOneLawSoManyTimesNeedsThePowerOfOneOverTheExponent() {
        Regimes regimes = oneLaw(0.6);
        FasterAnswer answer = one(regimes, 2e5, NO_LIMIT, 3);
        double n = regimes.laws().get(0).exponent();
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.SAME_REGIME);
        assertThat(answer.pressure().getAsDouble()).isCloseTo(2e5 * Math.pow(3, 1 / n), within(1.0));
        Interval.Estimated interval = answer.interval().estimated().orElseThrow();
        // the truth, 0.2 MPa·3^(1/0.6)
        assertThat(2e5 * Math.pow(3, 1 / 0.6)).isBetween(interval.low(), interval.high());
    }

    @Test
    void fromAmbientToFourMegapascalAnExponentOfSixTenthsGivesNineTimesAndNotFifty() {
        Regimes regimes = oneLaw(0.6);
        PressureLimit limit = new PressureLimit(OptionalDouble.of(5.1e6));
        FasterAnswer nine = one(regimes, 1e5, limit, 9);
        assertThat(nine.reach()).isEqualTo(FasterAnswer.Reach.SAME_REGIME);
        // 40^0.6 = 9.1; the exponent is known to some thousandths, and its peak may reach the limit
        assertThat(nine.pressure().getAsDouble()).isBetween(3.5e6, 4.05e6);
        FasterAnswer fifty = one(regimes, 1e5, limit, 50);
        assertThat(fifty.reach()).isEqualTo(FasterAnswer.Reach.OUT_OF_REACH);
        assertThat(fifty.pressure()).isEmpty();
        assertThat(fifty.interval()).isInstanceOf(Interval.NotEstimable.class);
        assertThat(fifty.sentence())
                .contains("50")
                .containsPattern("at most 1[01] times")
                .contains("5.10 MPa");
    }

    @Test
    void anotherRegimeDoesWhatTheRegimeOfNowCannot() {
        Regimes regimes = slowBelow();
        // 5.0 mm/s·(0.3)^0.4 at 0.3 MPa; four times that is 12.4 mm/s, below the 15 mm/s just above the jump
        FasterAnswer answer = one(regimes, 3e5, new PressureLimit(OptionalDouble.of(8e6)), 4);
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.ANOTHER_REGIME);
        assertThat(answer.pressure().getAsDouble())
                .isCloseTo(regimes.breaks().get(0).pressure(), within(1.0));
        assertThat(answer.sentence()).contains("another regime").contains("gives at most");
    }

    @Test
    void whereTheChangeItselfBringsTheRateItIsAsUncertainAsThePlaceOfTheChange() {
        Regimes regimes = slowBelow();
        FasterAnswer atTheJump = one(regimes, 3e5, new PressureLimit(OptionalDouble.of(8e6)), 4);
        assertThat(atTheJump.interval()).isEqualTo(regimes.breaks().get(0).interval());
        // 16 mm/s is reached a little above the jump, where the interval begins at the jump and not in the slow regime
        FasterAnswer above = one(regimes, 3e5, new PressureLimit(OptionalDouble.of(8e6)), 5.4);
        Interval.Estimated interval = above.interval().estimated().orElseThrow();
        assertThat(above.pressure().getAsDouble())
                .isGreaterThan(regimes.breaks().get(0).pressure())
                .isBetween(interval.low(), interval.high());
        assertThat(interval.low())
                .isGreaterThanOrEqualTo(regimes.breaks().get(0).pressure());
    }

    @Test
    void beyondThePressuresFiredTheAnswerSaysThatItIsExtrapolated() {
        Regimes regimes = oneLaw(0.6);
        double highest = regimes.regimes().get(0).law().pressureHigh();
        PressureLimit wide = new PressureLimit(OptionalDouble.of(100 * highest));
        double little = 1.05 * regimes.rate(highest) / regimes.rate(1e5);
        FasterAnswer answer = one(regimes, 1e5, wide, little);
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.EXTRAPOLATED);
        assertThat(answer.sentence()).contains("above the highest point").contains("Stay below");
        // Half as far again as the highest point, and not a step further, whatever the case stands.
        double far = 1.05 * regimes.rate(1.5 * highest) / regimes.rate(1e5);
        assertThat(one(regimes, 1e5, wide, far).pressure()).isEmpty();
        assertThat(one(regimes, 1e5, wide, far).sentence()).contains("the limit of extrapolation");
        // Where nobody states what the case stands, nothing above what was fired is named.
        FasterAnswer unstated = one(regimes, 1e5, NO_LIMIT, little);
        assertThat(unstated.pressure()).isEmpty();
        assertThat(unstated.sentence())
                .contains("the highest that was measured")
                .contains("case_pressure_limit");
    }

    @Test
    void aFallingRateIsOutOfReachAtEveryPressure() {
        Regimes regimes = oneLaw(-0.2);
        assertThat(one(regimes, 2e5, NO_LIMIT, 2).reach()).isEqualTo(FasterAnswer.Reach.OUT_OF_REACH);
    }

    @Test
    void aLoneSlowPointIsTheBaseOfItsOwnRegime() {
        List<FitPoint> points =
                new ArrayList<>(Simulated.points(8, 2e6, 8e6, Simulated.broken(4e6, 0.4, 0.4, 1), 0.02, 4));
        points.add(Simulated.point("bench", 101_325, 2e-4));
        Regimes regimes = RegimeSearch.search(points, RegimeOptions.defaults(7));
        FasterAnswer answer = one(regimes, 101_325, new PressureLimit(OptionalDouble.of(8e6)), 10);
        assertThat(answer.baseRate()).isCloseTo(2e-4, within(1e-12));
        // 2 mm/s lies far below what the others burn at the lowest of them: any pressure there will do
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.ANOTHER_REGIME);
        assertThat(answer.pressure().getAsDouble()).isCloseTo(2e6, within(1.0));
        assertThat(answer.sentence()).contains("too few points for a law of its own");
    }

    @Test
    void aFactorOfOneIsAFaultOfTheCaller() {
        Regimes regimes = oneLaw(0.5);
        assertThatThrownBy(() -> one(regimes, 1e5, NO_LIMIT, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1.0");
    }
}
