package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.regime.Regimes.RegimeKind;
import org.junit.jupiter.api.Test;

class StabilityTest {

    private static Regimes found(int points, double below, double above, double scatter) {
        return RegimeSearch.search(
                Simulated.points(points, 5e5, 1e7, Simulated.broken(2.2e6, below, above, 1), scatter, 5),
                RegimeOptions.defaults(3));
    }

    @Test
    void aSmallExponentIsStable() {
        Stability stability = Stability.of(found(10, 0.4, 0.4, 0.02));
        assertThat(stability.verdict()).isEqualTo(Stability.Verdict.STABLE);
        assertThat(stability.sentence()).contains("its whole interval is below 1");
    }

    @Test
    void anExponentThatMayBeOneIsNotCertain() {
        Regimes regimes = found(5, 0.95, 0.95, 0.08);
        Stability stability = Stability.of(regimes);
        assertThat(stability.verdict()).isEqualTo(Stability.Verdict.NOT_CERTAIN);
        assertThat(stability.sentence()).contains("1 is not ruled out").contains("Do not fire");
        assertThat(regimes.findings()).extracting(Finding::code).contains(FindingCode.UNSTABLE_EXPONENT);
    }

    @Test
    void theSteepestRegimeDecides() {
        Regimes regimes = found(24, 0.3, 1.4, 0.02);
        Stability stability = Stability.of(regimes);
        assertThat(regimes.selected()).isEqualTo(2);
        assertThat(stability.regime()).isEqualTo(regimes.regimes().get(1));
        assertThat(stability.verdict()).isEqualTo(Stability.Verdict.UNSTABLE);
        assertThat(regimes.regimes().get(1).kind()).isEqualTo(RegimeKind.UNSTABLE);
    }
}
