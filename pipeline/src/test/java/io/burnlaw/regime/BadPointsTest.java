package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.Regimes.Break;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Points that belong to no law, on points without scatter but for a few tenths of a percent. */
class BadPointsTest {

    private static final RegimeOptions OPTIONS = RegimeOptions.defaults(7);

    private static List<FitPoint> points(int count, double at, double jump) {
        return new ArrayList<>(Simulated.points(count, 0.3e6, 6e6, Simulated.broken(at, 0.36, 0.36, jump), 0.01, 5));
    }

    private static void off(List<FitPoint> points, int i, double factor) {
        FitPoint point = points.get(i);
        points.set(i, point.moved(point.pressure(), factor * point.rate()));
    }

    @Test
    void aQuarterOfBadPointsHidesNoFourfoldChange() {
        List<FitPoint> points = points(12, 1e6, 4);
        off(points, 1, 1.8);
        off(points, 7, 0.6);
        off(points, 10, 1.4);
        Regimes regimes = RegimeSearch.search(points, OPTIONS);
        assertThat(regimes.selected()).isEqualTo(2);
        assertThat(regimes.off()).containsExactlyInAnyOrder("p2", "p8", "p11");
        assertThat(regimes.regimes())
                .allSatisfy(regime -> assertThat(regime.ids()).doesNotContain("p2", "p8", "p11"));
        assertThat(regimes.breaks().get(0).rateRatioInterval().estimated())
                .hasValueSatisfying(found -> assertThat(4.0).isBetween(found.low(), found.high()));
    }

    @Test
    void badPointsAtAnEndMakeNoRegimeAndStayInTheFitOfOneLaw() {
        List<FitPoint> points = points(12, 1e6, 1);
        off(points, 10, 1.4);
        off(points, 11, 1.8);
        Regimes regimes = RegimeSearch.search(points, OPTIONS);
        assertThat(regimes.selected()).isEqualTo(1);
        assertThat(regimes.findings()).extracting(Finding::code).doesNotContain(FindingCode.SLOW_REGIME);
        assertThat(Thresholds.find(regimes, java.util.OptionalDouble.empty(), java.util.OptionalDouble.empty()))
                .isEmpty();
    }

    @Test
    void theAnswerNamesThePointsThatDecideIt() {
        List<FitPoint> points = points(8, 1e6, 4);
        off(points, 1, 1.9);
        off(points, 6, 0.55);
        List<Finding> deciding = RegimeSearch.search(points, OPTIONS).findings().stream()
                .filter(finding -> finding.code() == FindingCode.FEW_FIRINGS_DECIDE)
                .toList();
        assertThat(deciding)
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("p2", "p7", "With them"));
    }

    @Test
    void theAnswerThatRestsOnFiringsWithACautionSaysSo() {
        List<FitPoint> points = points(12, 0.6e6, 4);
        Set<String> slow = Set.of("p1", "p2", "p3");
        Regimes regimes = RegimeSearch.search(points, OPTIONS, new RegimeSearch.Circumstances(slow, Map.of()));
        assertThat(regimes.findings())
                .filteredOn(finding -> finding.code() == FindingCode.FEW_FIRINGS_DECIDE)
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("with a caution", "p1", "p3"));
    }

    @Test
    void aChangeBelowTwoPerCentIsNoSecondLaw() {
        // exact points of two laws that differ by half a percent of rate at most
        List<FitPoint> points = Simulated.points(12, 1e6, 4e6, Simulated.broken(2e6, 0.33, 0.33, 1.01), 1e-5, 3);
        RegimeOptions sharp = new RegimeOptions(7, 0.95, 199, OPTIONS.weighting(), 5, 3, 0, OPTIONS.limit());
        Regimes regimes = RegimeSearch.search(points, sharp);
        assertThat(regimes.evidence().sequentialAnswer()).isGreaterThan(1);
        assertThat(regimes.selected()).isEqualTo(1);
        assertThat(regimes.evidence().sentence()).contains("less than 2 % everywhere");
    }

    @Test
    void aJumpLiesBetweenAllPressuresThatItsTwoSidesBurnedAt() {
        List<FitPoint> points = points(12, 1e6, 4);
        Regimes alone = RegimeSearch.search(points, OPTIONS);
        double below = points.get(4).pressure();
        double above = points.get(5).pressure();
        assertThat(1e6).isBetween(below / 2, above * 2);
        Break plain = alone.breaks().get(0);
        double low = plain.interval().estimated().orElseThrow().low();
        double high = plain.interval().estimated().orElseThrow().high();
        String last =
                alone.regimes().get(0).ids().get(alone.regimes().get(0).ids().size() - 1);
        Regimes narrowed = RegimeSearch.search(
                points,
                OPTIONS,
                new RegimeSearch.Circumstances(
                        Set.of(), Map.of(last, new Regimes.Span(0.9 * low, Math.pow(low, 0.7) * Math.pow(high, 0.3)))));
        assertThat(narrowed.breaks().get(0).interval().estimated().orElseThrow().low())
                .isGreaterThan(low);
        assertThat(narrowed.breaks().get(0).interval().estimated().orElseThrow().high())
                .isEqualTo(high);
    }
}
