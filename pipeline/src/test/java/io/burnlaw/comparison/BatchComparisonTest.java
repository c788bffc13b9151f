package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.Oracle;
import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatchComparisonTest {

    private static final double[] PRESSURES = {1e6, 2e6, 4e6};

    /** Of a propellant: firings of each batch at the same three pressures. */
    private static Propellant cast(
            String id, int batches, double rise, double between, double within, SplittableRandom random) {
        List<FitPoint> points = new ArrayList<>();
        Map<String, String> names = new HashMap<>();
        for (int b = 0; b < batches; b++) {
            double effect = between * random.nextGaussian();
            for (double pressure : PRESSURES) {
                String name = id + b + "-" + (int) (pressure / 1e6);
                double ln = StrictMath.log(5e-3)
                        + rise
                        + 0.35 * StrictMath.log(pressure / 2e6)
                        + effect
                        + within * random.nextGaussian();
                points.add(new FitPoint(name, name, pressure, 0, StrictMath.exp(ln), 0, 0));
                names.put(name, id + b);
            }
        }
        return new Propellant(id, Optional.empty(), OptionalDouble.empty(), points, Optional.empty(), names, List.of());
    }

    private static Comparison.Compared compared(Propellant baseline, Propellant candidate) {
        return (Comparison.Compared) Comparisons.against(baseline, List.of(candidate), ComparisonOptions.defaults())
                .get(0);
    }

    @Test
    @Oracle(
            "Balanced nested layout: the difference is that of the batches' means, whose t test (Student 1908; Commons Math) "
                    + "is exact")
    void inABalancedLayoutTheIntervalIsThatOfTheMeansOfBatches() {
        SplittableRandom random = new SplittableRandom(11);
        Propellant baseline = cast("base", 4, 0, 0.04, 0.01, random);
        Propellant candidate = cast("cand", 4, 0.1, 0.04, 0.01, random);
        Comparison.Compared numbers = compared(baseline, candidate);
        double[] first = means(baseline);
        double[] second = means(candidate);
        double t = new TTest().homoscedasticT(second, first);
        // the geometric middle of 1 to 4 MPa is the mean of ln P, where level and exponent are uncorrelated
        double std = StrictMath.log(numbers.typical().high() / numbers.typical().low()) / 2 / 2.4469118511449786;
        assertThat(StrictMath.log(numbers.typical().value()) / std).isCloseTo(t, offset(1e-3 * Math.abs(t)));
    }

    private static double[] means(Propellant propellant) {
        Map<String, List<Double>> byBatch = new HashMap<>();
        propellant
                .points()
                .forEach(point -> byBatch.computeIfAbsent(
                                propellant.batches().get(point.cluster()), id -> new ArrayList<>())
                        .add(StrictMath.log(point.rate())));
        return byBatch.values().stream()
                .mapToDouble(batch ->
                        batch.stream().mapToDouble(each -> each).average().orElseThrow())
                .toArray();
    }

    @ParameterizedTest
    @CsvSource({"4, 3", "5, 1"})
    void aDifferenceBetweenCastingsIsSeldomTakenForOneOfThePropellant(int ofBaseline, int ofCandidate) {
        int rounds = 400;
        int withBatches = 0;
        int without = 0;
        for (int round = 0; round < rounds; round++) {
            SplittableRandom random = new SplittableRandom(500 + round);
            Propellant baseline = cast("base", ofBaseline, 0, 0.03, 0.01, random);
            Propellant candidate = cast("cand", ofCandidate, 0, 0.03, 0.01, random);
            withBatches += compared(baseline, candidate).differs() ? 1 : 0;
            without += compared(unnamed(baseline), unnamed(candidate)).differs() ? 1 : 0;
        }
        // 5 % by design, with two standard errors of a share at 400 rounds
        assertThat(withBatches / (double) rounds).isLessThan(0.072);
        assertThat(without / (double) rounds).isGreaterThan(0.2);
    }

    private static Propellant unnamed(Propellant propellant) {
        return MadeCampaigns.propellant(propellant.id(), propellant.points());
    }

    @Test
    void aChangeBeyondTheCastingsIsFound() {
        SplittableRandom random = new SplittableRandom(12);
        assertThat(compared(cast("base", 4, 0, 0.02, 0.01, random), cast("cand", 4, 0.2, 0.02, 0.01, random))
                        .differs())
                .isTrue();
    }

    @Test
    void oneCastingEachTellsNothingAndSaysHowManyWould() {
        SplittableRandom random = new SplittableRandom(14);
        Comparison.Compared numbers =
                compared(cast("base", 1, 0, 0, 0.01, random), cast("cand", 1, 0.1, 0, 0.01, random));
        assertThat(numbers.differs()).isFalse();
        assertThat(numbers.verdict())
                .startsWith("cand and base were cast once each: the effects of batch and additive cannot be separated.")
                .containsPattern("\\d+ batches of each are enough to show");
    }
}
