package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.MadeLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ComparisonsTest {

    private static final ComparisonOptions OPTIONS = ComparisonOptions.defaults();

    private final SplittableRandom random = new SplittableRandom(7);
    private final Propellant baseline =
            MadeCampaigns.propellant("date", MadeCampaigns.firings("b", 8, 5e-3, 0.4, 0.03, random));

    private static Comparison.Compared compared(Propellant baseline, Propellant candidate) {
        return (Comparison.Compared)
                Comparisons.against(baseline, List.of(candidate), OPTIONS).get(0);
    }

    @Test
    void aRiseOfAThirdIsShownWithItsSize() {
        Propellant candidate =
                MadeCampaigns.propellant("iron", MadeCampaigns.firings("c", 8, 6.65e-3, 0.4, 0.03, random));
        Comparison.Compared found = compared(baseline, candidate);
        assertThat(found.differs()).isTrue();
        assertThat(found.typical().low()).isLessThan(1.33);
        assertThat(found.typical().high()).isGreaterThan(1.33);
        assertThat(found.verdict()).contains("iron differs from date", "% faster", "exponents do not differ");
    }

    @Test
    void noDifferenceNamesTheChangeThatWouldHaveBeenSeen() {
        Propellant candidate =
                MadeCampaigns.propellant("chalk", MadeCampaigns.firings("c", 8, 5e-3, 0.4, 0.03, random));
        Comparison.Compared found = compared(baseline, candidate);
        assertThat(found.differs()).isFalse();
        assertThat(found.verdict())
                .contains("No difference shown between chalk", "This test detects changes of the rate above");
        assertThat(found.smallestDetectable()).isBetween(0.03, 0.12);
    }

    @Test
    void anotherExponentIsToldWithTheRatioAtBothEnds() {
        Propellant candidate =
                MadeCampaigns.propellant("steep", MadeCampaigns.firings("c", 8, 5e-3, 0.7, 0.03, random));
        Comparison.Compared found = compared(baseline, candidate);
        assertThat(found.parallel().pValue()).isLessThan(1e-3);
        assertThat(found.verdict()).contains("The exponents differ by");
        assertThat(found.ratio().get(24).value())
                .isGreaterThan(1.4 * found.ratio().get(0).value());
    }

    @Test
    void theBandForAllPressuresIsWiderThanTheIntervalForOne() {
        Propellant candidate =
                MadeCampaigns.propellant("iron", MadeCampaigns.firings("c", 8, 5.5e-3, 0.4, 0.03, random));
        Comparison.Compared found = compared(baseline, candidate);
        Comparison.Ratio middle = found.ratio().get(12);
        assertThat(middle.pressure()).isCloseTo(found.typical().pressure(), offset(1.0));
        assertThat(middle.value()).isCloseTo(found.typical().value(), offset(1e-9));
        assertThat(middle.low()).isLessThan(found.typical().low());
        assertThat(middle.high()).isGreaterThan(found.typical().high());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void unitsDoNotMatterAndExchangeInvertsTheRatio(long seed) {
        SplittableRandom numbers = new SplittableRandom(seed);
        Propellant one = MadeCampaigns.propellant("one", MadeCampaigns.firings("a", 6, 5e-3, 0.4, 0.05, numbers));
        Propellant two = MadeCampaigns.propellant("two", MadeCampaigns.firings("b", 9, 5.4e-3, 0.5, 0.05, numbers));
        Comparison.Compared plain = compared(one, two);
        Comparison.Compared scaled = compared(scaled(one), scaled(two));
        Comparison.Compared swapped = compared(two, one);
        // 1e-9: sums of logarithms in another order
        assertThat(scaled.coincident().statistic())
                .isCloseTo(
                        plain.coincident().statistic(),
                        offset(1e-9 * plain.coincident().statistic()));
        assertThat(scaled.exponentDifference()).isCloseTo(plain.exponentDifference(), offset(1e-9));
        assertThat(swapped.coincident().pValue()).isCloseTo(plain.coincident().pValue(), offset(1e-9));
        assertThat(swapped.typical().value()).isCloseTo(1 / plain.typical().value(), offset(1e-9));
        assertThat(swapped.typical().low()).isCloseTo(1 / plain.typical().high(), offset(1e-9));
    }

    private static Propellant scaled(Propellant propellant) {
        return MadeCampaigns.propellant(
                propellant.id(),
                propellant.points().stream()
                        .map(p -> MadeCampaigns.point(p.id(), p.cluster(), p.pressure() / 6894.757, p.rate() / 0.0254))
                        .toList());
    }

    @Test
    void repeatedPointsOfAFiringCountOnce() {
        List<FitPoint> once = MadeCampaigns.firings("c", 6, 5.3e-3, 0.4, 0.04, random);
        List<FitPoint> often = new ArrayList<>();
        for (FitPoint each : once) {
            for (int i = 0; i < 20; i++) {
                often.add(MadeCampaigns.point(each.id() + "-" + i, each.cluster(), each.pressure(), each.rate()));
            }
        }
        Comparison.Compared few = compared(baseline, MadeCampaigns.propellant("c", once));
        Comparison.Compared many = compared(baseline, MadeCampaigns.propellant("c", often));
        assertThat(many.coincident().denominatorDegrees())
                .isEqualTo(few.coincident().denominatorDegrees());
        assertThat(many.coincident().pValue()).isCloseTo(few.coincident().pValue(), offset(1e-9));
    }

    @Test
    void aPublishedLawSaysTheSameAsItsPoints() {
        List<FitPoint> points = MadeCampaigns.firings("c", 8, 5.6e-3, 0.45, 0.03, random);
        LogLine line = LogLine.of(points).orElseThrow();
        double reference = 1.7e6;
        double x = Math.log(reference);
        double variance = line.squares() / line.degrees();
        RateLaw law = MadeLaw.of(
                line.at(x),
                line.slope(),
                reference,
                variance * line.varianceAt(x),
                variance * (x - line.meanX()) / line.spread(),
                variance / line.spread(),
                line.degrees(),
                Math.sqrt(variance),
                points.get(0).pressure(),
                points.get(7).pressure(),
                8);
        Propellant published = new Propellant(
                "c", Optional.empty(), OptionalDouble.empty(), List.of(), Optional.of(law), Map.of(), List.of());
        Comparison.Compared byPoints = compared(baseline, MadeCampaigns.propellant("c", points));
        Comparison.Compared byLaw = compared(baseline, published);
        assertThat(byLaw.coincident().pValue()).isCloseTo(byPoints.coincident().pValue(), offset(1e-9));
        assertThat(byLaw.typical().low()).isCloseTo(byPoints.typical().low(), offset(1e-9));
    }

    @Test
    void aSlowRegimeIsComparedOnItsOwn() {
        SplittableRandom numbers = new SplittableRandom(3);
        List<FitPoint> slow = new ArrayList<>();
        for (FitPoint each : MadeCampaigns.firings("b", 14, 5e-3, 0.4, 0.03, numbers)) {
            double factor = each.pressure() < 2e6 ? 0.4 : 1;
            slow.add(MadeCampaigns.point(each.id(), each.cluster(), each.pressure(), factor * each.rate()));
        }
        Propellant broken = new Propellant(
                "slow", Optional.empty(), OptionalDouble.empty(), slow, Optional.empty(), Map.of(), List.of(2e6));
        Propellant fast = MadeCampaigns.propellant("fast", MadeCampaigns.firings("c", 10, 5e-3, 0.4, 0.03, numbers));
        List<Comparison> both = Comparisons.against(broken, List.of(fast), OPTIONS);
        assertThat(both).hasSize(2);
        assertThat(((Comparison.Compared) both.get(0)).typical().value()).isBetween(2.2, 2.8);
        assertThat(((Comparison.Compared) both.get(1)).differs()).isFalse();
    }

    @Test
    void severalCandidatesAreCorrectedTogether() {
        List<Propellant> three = List.of(
                MadeCampaigns.propellant("x", MadeCampaigns.firings("x", 5, 5e-3, 0.4, 0.03, random)),
                MadeCampaigns.propellant("y", MadeCampaigns.firings("y", 5, 5e-3, 0.4, 0.03, random)),
                MadeCampaigns.propellant("z", MadeCampaigns.firings("z", 5, 5e-3, 0.4, 0.03, random)));
        List<Comparison> all = Comparisons.against(baseline, three, OPTIONS);
        assertThat(all).extracting(Comparison::candidate).containsExactly("x", "y", "z");
        assertThat(all).allSatisfy(each -> {
            Comparison.Compared found = (Comparison.Compared) each;
            assertThat(found.adjustedPValue()).isGreaterThan(found.coincident().pValue());
            assertThat(found.verdict()).contains("after correction for 3 tests");
        });
    }

    @Test
    void withoutSharedPressuresThereIsAReason() {
        Propellant high = MadeCampaigns.propellant(
                "high",
                List.of(
                        MadeCampaigns.point("h1", "h1", 8e6, 8e-3),
                        MadeCampaigns.point("h2", "h2", 9e6, 9e-3),
                        MadeCampaigns.point("h3", "h3", 10e6, 9e-3)));
        Comparison found = Comparisons.against(baseline, List.of(high), OPTIONS).get(0);
        assertThat(((Comparison.NotCompared) found).reason())
                .contains("share no range of pressures", "8.00 to 10.0 MPa", "fire high between");
    }

    @Test
    void oneFiringIsNotEnough() {
        Propellant two = MadeCampaigns.propellant(
                "two", List.of(MadeCampaigns.point("a", "a", 2e6, 8e-3), MadeCampaigns.point("a2", "a", 3e6, 9e-3)));
        Comparison found = Comparisons.against(baseline, List.of(two), OPTIONS).get(0);
        assertThat(((Comparison.NotCompared) found).reason()).contains("two has fewer than two firings");
    }
}
