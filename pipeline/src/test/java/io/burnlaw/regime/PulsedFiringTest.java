package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A firing that pulsed did not come up: the threshold is above the pressure to which the slow law leads it. */
class PulsedFiringTest {

    private static final Regimes WITHOUT = search(List.of());
    private static final RateLaw SLOW = WITHOUT.laws().get(0);

    /** 5 mm/s below and 15 mm/s above 1 MPa, at 1 MPa; nothing was fired from 0.5 to 2 MPa. */
    private static Regimes search(List<PulsedFiring> pulsed) {
        List<FitPoint> points =
                new ArrayList<>(Simulated.points(8, 2e5, 5e5, Simulated.broken(1e6, 0.4, 0.4, 3), 0.005, 4));
        Simulated.points(8, 2e6, 6e6, Simulated.broken(1e6, 0.4, 0.4, 3), 0.005, 5)
                .forEach(point -> points.add(Simulated.point("f" + point.id(), point.pressure(), point.rate())));
        return RegimeSearch.search(
                points, RegimeOptions.defaults(7), new RegimeSearch.Circumstances(Set.of(), Map.of(), pulsed));
    }

    /** One whose chamber is in balance at a pressure by the slow law, known without error. */
    private static PulsedFiring balancedAt(double pressure) {
        return new PulsedFiring("C1", 123, pressure / SLOW.rate(pressure), 0);
    }

    @Test
    void theBoundIsTheBalanceLessItsUncertainty() {
        Interval.Estimated rate = SLOW.predict(8e5, 0.95).estimated().orElseThrow();
        // ln P moves by 1/(1−n) of ln r
        double low = 8e5 * Math.pow(rate.low() / SLOW.rate(8e5), 1 / (1 - SLOW.exponent()));
        assertThat(PulsedFiring.above(List.of(balancedAt(8e5)), SLOW, 0.95)
                        .orElseThrow()
                        .pressure())
                .isCloseTo(low, within(1e-6 * low));
        double unsure = PulsedFiring.above(
                        List.of(new PulsedFiring("C1", 123, balancedAt(8e5).balance(), 0.05)), SLOW, 0.95)
                .orElseThrow()
                .pressure();
        // at least 1.96 · 5 % / (1 − 0.4) lower than the balance
        assertThat(unsure).isLessThan(low).isLessThan(8e5 * Math.exp(-1.95 * 0.05 / (1 - SLOW.exponent())));
        assertThat(PulsedFiring.above(List.of(balancedAt(6e5), balancedAt(8e5)), SLOW, 0.95)
                        .orElseThrow()
                        .pressure())
                .as("two chances to be wrong")
                .isBetween(0.97 * low, low);
    }

    @Test
    void inTheGapItNarrowsTheThreshold() {
        Regimes with = search(List.of(balancedAt(8e5)));
        Interval.Estimated before =
                WITHOUT.breaks().get(0).interval().estimated().orElseThrow();
        Interval.Estimated after = with.breaks().get(0).interval().estimated().orElseThrow();
        assertThat(before.low()).isLessThan(5.1e5);
        assertThat(after.low()).isBetween(7e5, 8e5);
        assertThat(after.high()).isEqualTo(before.high());
        assertThat(with.breaks().get(0).pressure()).isCloseTo(Math.sqrt(after.low() * after.high()), within(1.0));
        assertThat(with.regimes().get(0).high()).isEqualTo(with.breaks().get(0).pressure());
        assertThat(with.findings())
                .filteredOn(finding -> finding.message().startsWith("Firing C1 pulsed at Kn 123"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("the threshold is above 0.7"))
                .extracting(Finding::code, Finding::severity)
                .containsExactly(FindingCode.SLOW_REGIME, Severity.NOTE);
    }

    @Test
    void belowTheSlowPointsItSaysNothing() {
        assertThat(search(List.of(balancedAt(3e5)))).isEqualTo(WITHOUT);
    }

    @Test
    void whereItShouldHaveComeUpItIsTheFiringThatIsDoubted() {
        Regimes with = search(List.of(balancedAt(4e6)));
        assertThat(with.breaks()).isEqualTo(WITHOUT.breaks());
        assertThat(with.findings()).extracting(Finding::message).anyMatch(text -> text.contains("for another reason"));
    }
}
