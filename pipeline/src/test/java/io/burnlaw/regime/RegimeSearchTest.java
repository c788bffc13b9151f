package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.RegimeKind;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RegimeSearchTest {

    private static final RegimeOptions OPTIONS = RegimeOptions.defaults(7);

    @Test
    void oneLawStaysOneLaw() {
        Regimes regimes = RegimeSearch.search(
                Simulated.points(12, 1e6, 1e7, Simulated.broken(3e6, 0.4, 0.4, 1), 0.03, 2), OPTIONS);
        assertThat(regimes.claim()).isEqualTo(Claim.SINGLE_LAW);
        assertThat(regimes.selected()).isEqualTo(1);
        assertThat(regimes.findings()).isEmpty();
    }

    @Test
    void aJumpIsFoundWithItsRatioAndTheSlowSideIsNamed() {
        Regimes regimes = RegimeSearch.search(
                Simulated.points(20, 2e5, 8e6, Simulated.broken(1e6, 0.4, 0.5, 3), 0.03, 6), OPTIONS);
        assertThat(regimes.claim()).isEqualTo(Claim.BREAK);
        assertThat(regimes.shape()).isEqualTo(Shape.JUMPING);
        assertThat(regimes.selected()).isEqualTo(2);
        Break at = regimes.breaks().get(0);
        assertThat(inside(at.interval(), 1e6)).isTrue();
        assertThat(inside(at.rateRatioInterval(), 3)).isTrue();
        assertThat(regimes.regimes().get(0).kind()).isEqualTo(RegimeKind.SLOW_BURNING);
        assertThat(regimes.findings()).extracting(Finding::code).contains(FindingCode.SLOW_REGIME);
    }

    @Test
    void theOrderOfThePointsDoesNotMatter() {
        List<FitPoint> points = Simulated.points(16, 1e6, 1e7, Simulated.broken(3e6, 0.7, 0.2, 1), 0.02, 3);
        List<FitPoint> shuffled = new ArrayList<>(points);
        Collections.shuffle(shuffled, new Random(1));
        assertThat(RegimeSearch.search(shuffled, OPTIONS)).isEqualTo(RegimeSearch.search(points, OPTIONS));
    }

    @Test
    void aHandTimedBurnAtAmbientPressureIsSetApartAsASlowRegime() {
        List<FitPoint> points =
                new ArrayList<>(Simulated.points(8, 2e6, 8e6, Simulated.broken(4e6, 0.4, 0.4, 1), 0.02, 4));
        points.add(Simulated.point("bench", 101_325, 2e-4));
        Regimes regimes = RegimeSearch.search(points, OPTIONS);
        assertThat(regimes.selected()).isEqualTo(1);
        UnsettledRegime slow = regimes.unsettled().orElseThrow();
        assertThat(slow.ids()).containsExactly("bench");
        // truth: 5 mm/s·(0.101325/4)^0.4 = 1.15 mm/s against 0.2 mm/s
        assertThat(inside(slow.ratioInterval(), 1.148 / 0.2)).isTrue();
        Threshold threshold = Thresholds.find(regimes, OptionalDouble.of(1700), OptionalDouble.of(900))
                .orElseThrow();
        assertThat(threshold.gapLow()).isEqualTo(101_325);
        assertThat(threshold.gapHigh()).isEqualTo(points.get(0).pressure());
        assertThat(threshold.interval()).isInstanceOf(Interval.NotEstimable.class);
        assertThat(threshold.sentence()).contains("0.101 MPa").contains("2.00 MPa");
    }

    @Test
    void onePressureIsAFaultOfTheCaller() {
        List<FitPoint> points = List.of(Simulated.point("a", 1e6, 1e-3), Simulated.point("b", 1e6, 2e-3));
        assertThatThrownBy(() -> RegimeSearch.search(points, OPTIONS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 points");
    }

    private static boolean inside(Interval interval, double value) {
        return interval.estimated()
                .map(e -> e.low() <= value && value <= e.high())
                .orElse(false);
    }
}
