package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ResamplingTest {

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void aRefitIsWhatTheOptimizerGives(Weighting weighting) {
        SplittableRandom random = new SplittableRandom(20);
        for (int round = 0; round < 25; round++) {
            List<FitPoint> points = withOwnStds(9, random);
            FitPoint last = points.get(8);
            points.add(new FitPoint("f8b", "f8", 0.3e6, 0, Campaigns.truth(0.3e6), last.rateStd(), 0));
            WeightedSolution all = (WeightedSolution) WeightedFit.fit(points, weighting, PressureErrors.NONE);
            int[] times = new int[9];
            for (int k = 0; k < 9; k++) {
                times[random.nextInt(9)]++;
            }
            double[] quick = new Resampling(all, points).refit(times);
            LeastSquares.Minimum slow = optimizer(all, points, times);
            // The optimizer ends where the sum of squares no longer changes in 14 digits.
            assertThat(quick[0]).isCloseTo(slow.parameters().get(0), within(1e-9));
            assertThat(quick[1]).isCloseTo(slow.parameters().get(1), within(1e-9));
        }
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void withoutOneFiringIsWhatTheOptimizerGivesForTheOthers(Weighting weighting) {
        SplittableRandom random = new SplittableRandom(21);
        for (int round = 0; round < 10; round++) {
            List<FitPoint> points = withOwnStds(7, random);
            points.add(new FitPoint("f2b", "f2", 0.5e6, 0, Campaigns.truth(0.5e6), 1e-5, 0));
            WeightedSolution all = (WeightedSolution) WeightedFit.fit(points, weighting, PressureErrors.NONE);
            double[][] left = new Resampling(all, points).jackknife();
            for (int out = 0; out < 7; out++) {
                int[] times = {1, 1, 1, 1, 1, 1, 1};
                times[out] = 0;
                LeastSquares.Minimum slow = optimizer(all, points, times);
                // As above.
                assertThat(left[out][0]).isCloseTo(slow.parameters().get(0), within(1e-9));
                assertThat(left[out][1]).isCloseTo(slow.parameters().get(1), within(1e-9));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Weighting.class)
    void ofManyFiringsOneMovesTheLawAsARefitDoes(Weighting weighting) {
        List<FitPoint> points = withOwnStds(301, new SplittableRandom(22));
        WeightedSolution all = (WeightedSolution) WeightedFit.fit(points, weighting, PressureErrors.NONE);
        Resampling resampling = new Resampling(all, points);
        double[][] left = resampling.jackknife();
        for (int out = 0; out < 301; out += 20) {
            int[] times = new int[301];
            Arrays.fill(times, 1);
            times[out] = 0;
            double[] refit = resampling.refit(times);
            for (int k = 0; k < 2; k++) {
                // A step is short by about what one firing weighs: 2/301, and up to 9 times that for the surest ones.
                double moved = Math.abs(refit[k] - all.parameters[k]);
                assertThat(left[out][k]).isCloseTo(refit[k], within(9 * 2.0 / 301 * moved + 1e-9));
            }
        }
    }

    private static List<FitPoint> withOwnStds(int firings, SplittableRandom random) {
        List<FitPoint> points = new ArrayList<>();
        for (FitPoint p : Campaigns.spread(firings, 0.06, random)) {
            double std = p.rate() * (0.01 + 0.02 * random.nextDouble());
            points.add(new FitPoint(p.id(), p.cluster(), p.pressure(), 0, p.rate(), std, 0));
        }
        return points;
    }

    /** With each firing's points as often as it was drawn. */
    private static LeastSquares.Minimum optimizer(WeightedSolution all, List<FitPoint> points, int[] times) {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            int cluster = Integer.parseInt(points.get(i).cluster().substring(1));
            for (int t = 0; t < times[cluster]; t++) {
                rows.add(new double[] {all.x[i], all.y[i], 1 / Math.sqrt(all.weight(i))});
            }
        }
        double[][] columns = new double[3][rows.size()];
        for (int r = 0; r < rows.size(); r++) {
            for (int c = 0; c < 3; c++) {
                columns[c][r] = rows.get(r)[c];
            }
        }
        return (LeastSquares.Minimum)
                LeastSquares.minimize(all.curve, columns[0], columns[1], columns[2], new double[] {0, 0.3});
    }
}
