package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.RateLawFit;
import io.burnlaw.regime.Regimes.Break;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WeightsAndClustersTest {

    private static final RegimeOptions OPTIONS = RegimeOptions.defaults(11);

    /** Scatter of one size in the rate; each point says that size. */
    private static List<FitPoint> evenScatter(int count, DoubleUnaryOperator rate, double std, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = 1e6 * Math.pow(10, i / (count - 1.0));
            double seen = rate.applyAsDouble(pressure) + std * random.nextGaussian();
            points.add(new FitPoint("p" + i, "p" + i, pressure, 0, seen, std, 0));
        }
        return points;
    }

    /** Firings of several points each along a burn, all of a firing off together. */
    private static List<FitPoint> burns(int firings, int each, DoubleUnaryOperator rate, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FitPoint> points = new ArrayList<>();
        for (int k = 0; k < firings; k++) {
            double own = 0.03 * random.nextGaussian();
            double step = 0;
            for (int j = 0; j < each; j++) {
                double pressure = 1e6 * Math.pow(8, k / (firings - 1.0)) * (1 + 0.4 * j / each);
                step = 0.9 * step + 0.004 * random.nextGaussian();
                double seen = rate.applyAsDouble(pressure) * Math.exp(own + step);
                points.add(new FitPoint("f" + k + "-" + j, "f" + k, pressure, 0, seen, 0, 0));
            }
        }
        return points;
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void everyWeightingFindsAPlainBreak(Weighting weighting) {
        Regimes found = RegimeSearch.search(
                evenScatter(24, Simulated.broken(3e6, 0.8, 0.1, 1), 1e-4, 5), OPTIONS.withWeighting(weighting));
        assertThat(found.selected()).isEqualTo(2);
        // 0.1 mm/s on 2 to 5.6 mm/s: the break is known to some percent
        assertThat(found.breaks().get(0).pressure()).isCloseTo(3e6, within(0.3e6));
        assertThat(found.laws()).allSatisfy(law -> assertThat(law.weighting()).isEqualTo(weighting));
    }

    @Test
    void oneLawOfMeasuredWeightsIsTheLawOfTheFit() {
        List<FitPoint> points = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 12; i++) {
            double pressure = 1e6 * Math.pow(10, i / 11.0);
            double std = i % 2 == 0 ? 0.01 : 0.04;
            double rate = 5e-3 * Math.pow(pressure / 1e6, 0.4) * Math.exp(std * random.nextGaussian());
            points.add(new FitPoint("p" + i, "p" + i, pressure, 0, rate, std * rate, 0));
        }
        RateLaw searched = RegimeSearch.search(points, OPTIONS.withWeighting(Weighting.MEASURED))
                .laws()
                .get(0);
        RateLaw fitted = law(points, Weighting.MEASURED);
        // the same weighted line between logarithms, by sums in another order
        assertThat(searched.exponent()).isCloseTo(fitted.exponent(), within(1e-9));
        assertThat(searched.rate(2e6) / fitted.rate(2e6)).isCloseTo(1, within(1e-9));
        assertThat(searched.exponentStd() / fitted.exponentStd()).isCloseTo(1, within(1e-6));
    }

    @Test
    void oneLawOfProportionalWeightsIsTheLawOfTheFit() {
        List<FitPoint> points = Simulated.points(9, 1e6, 1e7, Simulated.broken(3e6, 0.4, 0.4, 1), 0.03, 2);
        RateLaw searched = RegimeSearch.search(points, OPTIONS).laws().get(0);
        RateLaw fitted = law(points, Weighting.PROPORTIONAL);
        assertThat(searched.exponent()).isCloseTo(fitted.exponent(), within(1e-9));
        assertThat(searched.exponentStd() / fitted.exponentStd()).isCloseTo(1, within(1e-6));
        assertThat(searched.degreesOfFreedom()).isEqualTo(fitted.degreesOfFreedom());
    }

    private static RateLaw law(List<FitPoint> points, Weighting weighting) {
        return ((FitResult.Fitted) RateLawFit.fit(
                        points, FitOptions.defaults().with(weighting).withBootstrap(0, 1)))
                .law();
    }

    @Tag("long")
    @Test
    void pointsOfOneFiringDoNotPassForFirings() {
        int found = 0;
        int runs = 40;
        for (int seed = 0; seed < runs; seed++) {
            Regimes regimes = RegimeSearch.search(
                    burns(8, 12, Simulated.broken(3e6, 0.4, 0.4, 1), seed), Simulated.withReplicates(OPTIONS, 199));
            found += regimes.evidence().sequentialAnswer() > 1 ? 1 : 0;
            assertThat(regimes.evidence().clusters()).isEqualTo(8);
        }
        // as independent points, nearly all of these would be broken; 5 % of 40 by chance, 6 is beyond one in 300
        assertThat(found).isLessThanOrEqualTo(6);
    }

    @Test
    void aJumpAcrossFiringsIsFoundInTheirBurns() {
        Regimes regimes = RegimeSearch.search(burns(10, 10, Simulated.broken(3e6, 0.4, 0.4, 2.5), 3), OPTIONS);
        assertThat(regimes.selected()).isEqualTo(2);
        assertThat(regimes.breaks().get(0).kind()).isEqualTo(Break.Kind.JUMP);
        Interval.Estimated interval =
                regimes.breaks().get(0).interval().estimated().orElseThrow();
        assertThat(3e6).isBetween(interval.low(), interval.high());
    }
}
