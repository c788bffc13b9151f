package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.MadeLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.RegimeKind;
import io.burnlaw.regime.Regimes.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** What laws that were written down give, without a search: where they hold, and what it takes to burn faster. */
class LawsByHandTest {

    private static final Offset<Double> PASCAL = within(1e-3);
    private static final PressureLimit NO_LIMIT = PressureLimit.UNSTATED;

    private static Interval between(double low, double high) {
        return new Interval.Estimated(low, high, 0.9, Interval.Method.PROFILE);
    }

    /** r = rate · (P/1 MPa)^exponent, points from low to high [MPa], the exponent known to ± 0.1. */
    private static Regime regime(double rate, double exponent, double low, double high, int points) {
        RateLaw law = MadeLaw.of(Math.log(rate), exponent, 1e6, 1e-6, 0, 1e-4, 5, 0.01, 1e6 * low, 1e6 * high, points);
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            ids.add(low + "-" + i);
        }
        return new Regime(
                law,
                RegimeKind.ORDINARY,
                true,
                between(exponent - 0.1, exponent + 0.1),
                1e6 * low,
                1e6 * high,
                ids,
                "invented");
    }

    private static Break at(double megapascal, Interval interval) {
        return new Break(1e6 * megapascal, interval, Break.Kind.SLOPE, 1, between(1, 1), 0.4, 0.4);
    }

    private static Regimes regimes(List<Regime> regimes, List<Break> breaks) {
        return new Regimes(Claim.BREAK, Shape.JOINED, regimes, breaks, null, Optional.empty(), List.of(), List.of());
    }

    // 4 mm/s·P^0.5 to 4 MPa, a plateau of 8 mm/s to 9 MPa, 8 mm/s·(P/9)^2 above; points to 16 MPa
    private static final Regime SLOW = regime(4e-3, 0.5, 1, 4, 3);
    private static final Regime PLATEAU = regime(8e-3, 0, 4, 9, 5);
    private static final Regime STEEP = regime(8e-3 / 81, 2, 9, 16, 5);
    private static final Regimes THREE =
            regimes(List.of(SLOW, PLATEAU, STEEP), List.of(at(4, between(3.5e6, 4.4e6)), at(9, between(8.7e6, 9.6e6))));

    private static FasterAnswer faster(double base, PressureLimit limit, double factor) {
        return PressureForRate.answer(THREE, 1e6 * base, limit, List.of(factor)).get(0);
    }

    @Test
    void fromABreakOnTheUpperLawHolds() {
        assertThat(THREE.at(1e5)).isSameAs(SLOW);
        assertThat(THREE.at(3.999e6)).isSameAs(SLOW);
        assertThat(THREE.at(4e6)).isSameAs(PLATEAU);
        assertThat(THREE.at(9e6)).isSameAs(STEEP);
        assertThat(THREE.at(1e9)).isSameAs(STEEP);
        assertThat(THREE.rate(2.25e6)).isCloseTo(6e-3, within(1e-15));
        assertThat(THREE.rate(18e6)).isCloseTo(32e-3, within(1e-15));
        assertThat(THREE.laws()).containsExactly(SLOW.law(), PLATEAU.law(), STEEP.law());
    }

    @Test
    void theLawOfMostPointsHoldsBetweenTheIntervalsOfItsBreaks() {
        // of two with five points the lower one
        assertThat(THREE.widest()).isEqualTo(new Regimes.Span(4.4e6, 8.7e6));
        Regimes two = regimes(List.of(SLOW, PLATEAU), List.of(at(4, new Interval.NotEstimable("few"))));
        assertThat(two.widest()).isEqualTo(new Regimes.Span(4e6, Double.POSITIVE_INFINITY));
        Regimes turned = regimes(List.of(PLATEAU, SLOW), List.of(at(4, between(3e6, 5e6))));
        assertThat(turned.widest()).isEqualTo(new Regimes.Span(0, 3e6));
        Regimes open = regimes(List.of(PLATEAU, SLOW), List.of(at(4, new Interval.NotEstimable("few"))));
        assertThat(open.widest()).isEqualTo(new Regimes.Span(0, 4e6));
        assertThat(regimes(List.of(SLOW), List.of()).widest()).isEqualTo(new Regimes.Span(0, Double.POSITIVE_INFINITY));
        assertThatThrownBy(() -> regimes(List.of(SLOW), List.of(at(4, between(3, 5)))))
                .hasMessageContaining("1 regimes with 1 breaks");
        assertThatThrownBy(() -> regimes(List.of(), List.of())).hasMessageContaining("0 regimes");
    }

    @Test
    void withinARegimeThePressureRisesByThePowerOfOneOverTheExponent() {
        FasterAnswer answer = faster(1, NO_LIMIT, 1.5);
        assertThat(answer.baseRate()).isCloseTo(4e-3, within(1e-15));
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.SAME_REGIME);
        assertThat(answer.pressure().getAsDouble()).isCloseTo(2.25e6, PASCAL);
        Interval.Estimated interval = answer.interval().estimated().orElseThrow();
        // n from 0.4 to 0.6
        assertThat(interval.low()).isCloseTo(1e6 * Math.pow(1.5, 1 / 0.6), PASCAL);
        assertThat(interval.high()).isCloseTo(1e6 * Math.pow(1.5, 1 / 0.4), PASCAL);
        assertThat(answer.sentence())
                .startsWith("1.50 times faster than the 4.00 mm/s at 1.00 MPa is 6.00 mm/s, and needs 2.2")
                .contains("in the same regime")
                .endsWith("add case_pressure_limit.");
    }

    @Test
    void whatThePlateauCannotGiveTheLawAboveItGives() {
        // 12 mm/s: above the plateau of 8, where 8·(P/9)² = 12 at 9·sqrt(1.5) = 11.02 MPa
        FasterAnswer answer = faster(1, new PressureLimit(OptionalDouble.of(20e6)), 3);
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.ANOTHER_REGIME);
        assertThat(answer.pressure().getAsDouble()).isCloseTo(9e6 * Math.sqrt(1.5), PASCAL);
        Interval.Estimated interval = answer.interval().estimated().orElseThrow();
        assertThat(interval.low())
                .isGreaterThanOrEqualTo(9e6)
                .isLessThan(answer.pressure().getAsDouble());
        assertThat(interval.high())
                .isGreaterThan(answer.pressure().getAsDouble())
                .isLessThan(12.5e6);
        // the regime of now gives sqrt(4) up to its end
        assertThat(answer.sentence())
                .contains("gives at most 2.0 times up to 4.00 MPa.")
                .endsWith("Stay below 20.0 MPa absolute, the case limit over its safety factor.");
        // from the plateau on, which has no crossing of its own
        FasterAnswer plateau = faster(6, NO_LIMIT, 1.5);
        assertThat(plateau.baseRate()).isCloseTo(8e-3, within(1e-15));
        assertThat(plateau.pressure().getAsDouble()).isCloseTo(9e6 * Math.sqrt(1.5), PASCAL);
        assertThat(plateau.reach()).isEqualTo(FasterAnswer.Reach.ANOTHER_REGIME);
        // from the steep law itself
        FasterAnswer steep = faster(9, NO_LIMIT, 2.25);
        assertThat(steep.pressure().getAsDouble()).isCloseTo(13.5e6, PASCAL);
        assertThat(steep.reach()).isEqualTo(FasterAnswer.Reach.SAME_REGIME);
    }

    @Test
    void aboveTheHighestPointItIsExtrapolated() {
        // 8·(16/9)² = 25.28 mm/s at the highest point
        assertThat(faster(4, NO_LIMIT, 3.1).reach()).isEqualTo(FasterAnswer.Reach.ANOTHER_REGIME);
        FasterAnswer beyond = faster(4, new PressureLimit(OptionalDouble.of(40e6)), 3.2);
        assertThat(beyond.reach()).isEqualTo(FasterAnswer.Reach.EXTRAPOLATED);
        assertThat(beyond.pressure().getAsDouble()).isCloseTo(9e6 * Math.sqrt(3.2), PASCAL);
        assertThat(beyond.sentence()).contains("above the highest point, 16.0 MPa");
    }

    @Test
    void whatNoAllowedPressureGivesIsOutOfReachAndHowMuchIsNotIsSaid() {
        // 12 mm/s needs 11.02 MPa: at 11 MPa there are 8·(11/9)² = 11.95 mm/s, 2.99 times the 4 mm/s
        FasterAnswer short3 = faster(1, new PressureLimit(OptionalDouble.of(11e6)), 3);
        assertThat(short3.reach()).isEqualTo(FasterAnswer.Reach.OUT_OF_REACH);
        assertThat(short3.pressure()).isEmpty();
        assertThat(short3.sentence())
                .contains(
                        "up to 11.0 MPa, the case limit over its safety factor, gives 3.00 times the 4.00 mm/s of 1.00 MPa")
                .contains("(that is 12.0 mm/s)")
                .contains("at most 3.0 times");
        // at 6 MPa no more than the plateau, twice the rate; at 2.25 MPa one and a half times
        assertThat(faster(1, new PressureLimit(OptionalDouble.of(6e6)), 3).sentence())
                .contains("at most 2.0 times");
        assertThat(faster(1, new PressureLimit(OptionalDouble.of(2.25e6)), 3).sentence())
                .contains("at most 1.5 times");
        // above the highest point the last law goes on up to the limit: (18/9)² · 8 = 32 mm/s, 8 times
        assertThat(faster(1, new PressureLimit(OptionalDouble.of(18e6)), 9).sentence())
                .contains("at most 8.0 times");
        // 7.9 times needs 17.9 MPa in the mean: its peak could pass 18 MPa
        FasterAnswer close = faster(1, new PressureLimit(OptionalDouble.of(18e6)), 7.9);
        assertThat(close.pressure()).isEmpty();
        assertThat(close.sentence()).contains("could pass 18.0 MPa").contains("none is named");
    }

    @Test
    void aRateThatFallsHasItsBestWhereItBegan() {
        // a mesa: 8 mm/s at 4 MPa, 8·(9/4)^-0.5 = 5.33 at 9 MPa
        Regimes mesa = regimes(List.of(SLOW, regime(16e-3, -0.5, 4, 9, 5)), List.of(at(4, between(3.5e6, 4.4e6))));
        FasterAnswer out = PressureForRate.answer(mesa, 1e6, new PressureLimit(OptionalDouble.of(8e6)), List.of(2.5))
                .get(0);
        assertThat(out.reach()).isEqualTo(FasterAnswer.Reach.OUT_OF_REACH);
        assertThat(out.sentence()).contains("at most 2.0 times");
        FasterAnswer open =
                PressureForRate.answer(mesa, 1e6, NO_LIMIT, List.of(2.5)).get(0);
        assertThat(open.sentence())
                .startsWith("No pressure up to 9.00 MPa, the highest that was measured, gives 2.50 times")
                .contains("at most 2.0 times");
    }

    @Test
    void anExponentThatMayBeZeroGivesNoPressure() {
        Regime flat = regime(5e-3, 0.09, 1, 9, 6);
        FasterAnswer answer = PressureForRate.answer(regimes(List.of(flat), List.of()), 1e6, NO_LIMIT, List.of(1.1))
                .get(0);
        assertThat(answer.reach()).isEqualTo(FasterAnswer.Reach.SAME_REGIME);
        assertThat(answer.pressure().getAsDouble()).isCloseTo(1e6 * Math.pow(1.1, 1 / 0.09), within(1.0));
        assertThat(answer.interval())
                .isInstanceOfSatisfying(
                        Interval.NotEstimable.class,
                        none -> assertThat(none.reason()).contains("reaches zero"));
    }
}
