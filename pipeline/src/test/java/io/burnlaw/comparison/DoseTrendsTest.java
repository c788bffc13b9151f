package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class DoseTrendsTest {

    private static final ComparisonOptions OPTIONS = ComparisonOptions.defaults();

    private static Optional<DoseTrend> trend(DoubleUnaryOperator lnRise, double exponentRise, double... fractions) {
        SplittableRandom random = new SplittableRandom(11);
        Propellant baseline = MadeCampaigns.propellant("base", firings("base", 0, lnRise, 0, random));
        List<Propellant> levels = new ArrayList<>();
        for (double fraction : fractions) {
            String id = "iron-" + fraction;
            levels.add(new Propellant(
                    id,
                    Optional.of("iron oxide"),
                    OptionalDouble.of(fraction),
                    firings(id, fraction, lnRise, exponentRise, random),
                    Optional.empty(),
                    Map.of(),
                    List.of()));
        }
        return DoseTrends.of("iron oxide", baseline, levels, OPTIONS);
    }

    private static List<FitPoint> firings(
            String id, double fraction, DoubleUnaryOperator lnRise, double exponentRise, SplittableRandom random) {
        return MadeCampaigns.firings(
                id, 6, 5e-3 * Math.exp(lnRise.applyAsDouble(fraction)), 0.4 + exponentRise * fraction, 0.02, random);
    }

    @Test
    void aStraightRiseIsFoundWithinItsInterval() {
        DoseTrend found = trend(f -> 9 * f, 0, 0.02, 0.005, 0.01).orElseThrow();
        assertThat(found.interval().low()).isLessThan(9);
        assertThat(found.interval().high()).isGreaterThan(9);
        assertThat(found.trend().pValue()).isLessThan(1e-3);
        assertThat(found.straight().pValue()).isGreaterThan(0.05);
        assertThat(found.ownExponents()).isFalse();
        assertThat(found.formulations()).containsExactly("base", "iron-0.005", "iron-0.01", "iron-0.02");
        assertThat(found.sentence()).contains("each percent by mass of iron oxide changes the rate by");
    }

    @Test
    void anEffectThatSaturatesIsNoStraightLine() {
        DoseTrend found = trend(f -> f > 0 ? 0.2 : 0, 0, 0.005, 0.01, 0.02).orElseThrow();
        assertThat(found.straight().pValue()).isLessThan(1e-3);
        assertThat(found.sentence()).contains("are not on a straight line");
    }

    @Test
    void noEffectIsNoTrend() {
        DoseTrend found = trend(f -> 0, 0, 0.005, 0.01, 0.02).orElseThrow();
        assertThat(found.trend().pValue()).isGreaterThan(0.05);
        assertThat(found.sentence()).contains("no trend over iron oxide is shown");
    }

    @Test
    void levelsWithTheirOwnExponentsAreGivenThem() {
        DoseTrend found = trend(f -> 9 * f, 15, 0.005, 0.01, 0.02).orElseThrow();
        assertThat(found.ownExponents()).isTrue();
        assertThat(found.sentence()).contains("the exponent changes with the level as well");
    }

    @Test
    void oneLevelIsAComparisonAndNoTrend() {
        assertThat(trend(f -> 9 * f, 0, 0.01)).isEmpty();
    }
}
