package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The ratio of burning surface to throat area at a threshold: a motor may be built by it. */
class ThresholdsTest {

    private static final OptionalDouble DENSITY = OptionalDouble.of(1700);
    private static final OptionalDouble VELOCITY = OptionalDouble.of(900);

    /** 5 mm/s below and 15 mm/s above 1 MPa. */
    private static final Regimes JUMP = RegimeSearch.search(
            Simulated.points(20, 2e5, 8e6, Simulated.broken(1e6, 0.4, 0.4, 3), 0.005, 6), RegimeOptions.defaults(7));

    private static Regimes withALoneEnd(double pressure, double rate) {
        List<FitPoint> points =
                new ArrayList<>(Simulated.points(8, 1e6, 4e6, Simulated.broken(2e6, 0.4, 0.4, 1), 0.005, 4));
        points.add(Simulated.point("lone", pressure, rate));
        return RegimeSearch.search(points, RegimeOptions.defaults(7));
    }

    @Test
    void theRatiosAtAJumpAreThoseOfTheEquilibrium() {
        Threshold threshold = Thresholds.find(JUMP, DENSITY, VELOCITY).orElseThrow();
        double pressure = threshold.pressure();
        double fast = JUMP.laws().get(1).rate(pressure);
        // K_n = P/(rho r c*), by hand
        assertThat(threshold.stayRatio().getAsDouble()).isCloseTo(pressure / (1700 * fast * 900), within(1e-9));
        assertThat(threshold.climbRatio().getAsDouble())
                .isCloseTo(threshold.rateRatio() * pressure / (1700 * fast * 900), within(1e-9));
        // truth: three times the rate; 1e6/(1700·0.015·900) = 43.6 and 130.7, both known as the place of the jump is
        assertThat(threshold.rateRatio()).isCloseTo(3, within(0.1));
        assertThat(threshold.stayRatio().getAsDouble()).isCloseTo(43.6, within(43.6 * 0.1));
        assertThat(threshold.climbRatio().getAsDouble()).isCloseTo(130.7, within(130.7 * 0.1));
        assertThat(threshold.interval()).isEqualTo(JUMP.breaks().get(0).interval());
        assertThat(threshold.below()).contains("p1").doesNotContain("p20");
        assertThat(threshold.above()).contains("p20").doesNotContain("p1");
        assertThat(threshold.below().size() + threshold.above().size()).isEqualTo(20);
        assertThat(threshold.gapLow()).isEqualTo(JUMP.laws().get(0).pressureHigh());
        assertThat(threshold.gapHigh()).isEqualTo(JUMP.laws().get(1).pressureLow());
    }

    @Test
    void theSentenceGivesTheRatioForTheUpperEndOfTheIntervalToo() {
        Threshold threshold = Thresholds.find(JUMP, DENSITY, VELOCITY).orElseThrow();
        double high = threshold.interval().estimated().orElseThrow().high();
        double safe = high / (1700 * JUMP.laws().get(1).rate(high) * 900);
        assertThat(safe).isGreaterThan(threshold.stayRatio().getAsDouble() * 1.005);
        assertThat(threshold.sentence())
                .contains("(Kn) at least " + three(threshold.stayRatio().getAsDouble()) + " for the whole burn")
                .contains("(" + three(safe) + " to be above " + Words.pressure(high) + ")")
                .contains("only above Kn " + three(threshold.climbRatio().getAsDouble()))
                .contains("the rate rises 3.0 times, from "
                        + Words.rate(JUMP.laws().get(1).rate(threshold.pressure()) / threshold.rateRatio()))
                .endsWith("Check that the case can stand the pressure that this gives.");
    }

    private static String three(double value) {
        return io.burnlaw.quantity.NumberFormat.significant(value, 3);
    }

    @Test
    void withoutDensityOrVelocityThereIsNoRatio() {
        for (Threshold threshold : List.of(
                Thresholds.find(JUMP, OptionalDouble.empty(), VELOCITY).orElseThrow(),
                Thresholds.find(JUMP, DENSITY, OptionalDouble.empty()).orElseThrow())) {
            assertThat(threshold.stayRatio()).isEmpty();
            assertThat(threshold.climbRatio()).isEmpty();
            assertThat(threshold.sentence()).contains("Add density and c*").doesNotContain("at least");
        }
    }

    @Test
    void belowALoneSlowPointNoMotorCanBeSaidToClimb() {
        Regimes regimes = withALoneEnd(3e5, 5e-4);
        Threshold threshold = Thresholds.find(regimes, DENSITY, VELOCITY).orElseThrow();
        // only the lowest of the fast points is known to burn fast: 5·0.5^0.4 = 3.79 mm/s at 1 MPa
        assertThat(threshold.stayRatio().getAsDouble())
                .isCloseTo(1e6 / (1700 * regimes.rate(1e6) * 900), within(1e-9))
                .isCloseTo(172.5, within(3.0));
        assertThat(threshold.climbRatio()).isEmpty();
        assertThat(threshold.below()).containsExactly("lone");
        assertThat(threshold.above()).hasSize(8).doesNotContain("lone");
        assertThat(threshold.interval()).isInstanceOf(Interval.NotEstimable.class);
        assertThat(threshold.sentence()).doesNotContain("speeds up by itself").contains("at least");
    }

    @Test
    void aLoneFastPointHasTheSlowLawBelowIt() {
        Regimes regimes = withALoneEnd(8e6, 4e-2);
        Threshold threshold = Thresholds.find(regimes, DENSITY, VELOCITY).orElseThrow();
        assertThat(threshold.stayRatio().getAsDouble()).isCloseTo(8e6 / (1700 * 4e-2 * 900), within(1e-6));
        // the slow law goes on to 5·4^0.4 = 8.71 mm/s at 8 MPa
        assertThat(threshold.climbRatio().getAsDouble())
                .isCloseTo(8e6 / (1700 * regimes.rate(8e6) * 900), within(1e-6))
                .isCloseTo(600, within(20.0));
        assertThat(threshold.above()).containsExactly("lone");
        assertThat(threshold.below()).hasSize(8);
    }

    @Test
    void oneLawHasNoThreshold() {
        Regimes one = RegimeSearch.search(
                Simulated.points(10, 2e5, 8e6, Simulated.broken(1e6, 0.4, 0.4, 1), 0.01, 6), RegimeOptions.defaults(7));
        assertThat(Thresholds.find(one, DENSITY, VELOCITY)).isEmpty();
    }
}
