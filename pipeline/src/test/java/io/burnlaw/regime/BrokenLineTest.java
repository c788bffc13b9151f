package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BrokenLineTest {

    private static PiecewiseFit joined(Sample sample, int laws) {
        double[][] breaks = new JoinedSearch(sample, laws, 3).best(sample.ys()).breaks();
        return JoinedFit.of(sample, sample.ys(), breaks[laws - 1], 3);
    }

    @ParameterizedTest
    @CsvSource({
        // 28 rows: the last figures that the package prints; 29 rows likewise
        "stagnant28.csv, 0.0411057822316, 0.00914019723208813, 0.393922870838977, -0.422076813707, -1.020567544",
        "stagnant29.csv, 0.0359119975431, 0.00938136269762,    0.413233161656,    -0.4220768146,   -1.016592653"
    })
    @Oracle(
            value = "Bacon and Watts (1971), stagnant band heights; broken line by R 4.2.2, segmented 1.6-2",
            agreement = "break 1e-8, residual sum of squares and slopes 1e-9 relative")
    void theBrokenLineOfTheBandHeightsAgrees(
            String file, double at, double rss, double single, double below, double above) {
        Sample sample = Table.sample(file);
        PiecewiseFit fit = joined(sample, 2);
        assertThat(Line.through(sample.xs(), sample.ys(), sample.ws(), 0, sample.size())
                        .rss())
                .isCloseTo(single, within(1e-11));
        // printed to 12 decimals; that program stops iterating at about 1e-9 of the break
        assertThat(fit.breaks()[0]).isCloseTo(at, within(1e-8));
        assertThat(fit.rss()).isCloseTo(rss, within(1e-11));
        assertThat(fit.slopes()[0]).isCloseTo(below, within(1e-8));
        assertThat(fit.slopes()[1]).isCloseTo(above, within(1e-8));
    }

    @Test
    @Oracle(
            value =
                    "Bacon and Watts (1971), stagnant band heights, 28 rows; standard errors by R 4.2.2, segmented 1.6-2",
            agreement = "relative 1e-5")
    void theStandardErrorsOfTheSlopesAgree() {
        List<FitPoint> points = new ArrayList<>();
        for (double[] row : Table.read("stagnant28.csv")) {
            String id = "p" + points.size();
            points.add(new FitPoint(id, id, Math.exp(row[0]), 0, Math.exp(row[1]), 0, 0));
        }
        Sample sample = Sample.of(points, Weighting.PROPORTIONAL, 0);
        PiecewiseFit fit = joined(sample, 2);
        List<RateLaw> laws = SegmentLaws.of(sample, fit, NoiseModel.of(sample, fit, 0), Weighting.PROPORTIONAL);
        double below = laws.get(0).exponentStd();
        double above = laws.get(1).exponentStd();
        assertThat(laws.get(0).degreesOfFreedom()).isEqualTo(24);
        // 1e-5: that program takes the derivative at a break that is off by some 1e-9, and prints 10 digits
        assertThat(below / 0.011487306573).isCloseTo(1, within(1e-5));
        assertThat(Math.hypot(below, above) / 0.018947321384).isCloseTo(1, within(1e-5));
    }

    @Test
    @Oracle(
            value = "Nile at Aswan 1871-1970 (Cobb 1978); step changes of the mean by R 4.2.2, strucchange 1.5-3",
            agreement = "break, residual sums of squares as printed, supF 1e-8")
    void theStepInTheFlowOfTheNileAgrees() {
        Sample sample = Table.sample("nile.csv");
        // at least 15 years a piece, the 15 % of that program
        JumpingSearch search = new JumpingSearch(sample, 6, 15, JumpingSearch.Pieces.CONSTANT);
        JumpingSearch.Best best = search.best(sample.ys());
        double[] printed = {2835156.75, 1597457.19444, 1552923.61578, 1538096.51275, 1507888.47592, 1659993.50043};
        for (int k = 0; k < printed.length; k++) {
            assertThat(best.rss()[k]).isCloseTo(printed[k], within(1e-5));
        }
        // 28 years before the break: 1898 is the last
        assertThat(best.starts()[1]).containsExactly(0, 28);
        double f = (best.rss()[0] - best.rss()[1]) / (best.rss()[1] / 98);
        assertThat(f).isCloseTo(75.92976943, within(1e-8));
    }

    /** Against plain search over all partitions, each refitted from scratch. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void dynamicProgrammingFindsTheBestOfAllPartitions(long seed) {
        Sample sample = BentLine.sample(13, seed, 0.4, 6);
        double[] rss = new JumpingSearch(sample, 4, 3, JumpingSearch.Pieces.SLOPED).rss(sample.ys());
        for (int count = 1; count <= 4; count++) {
            double least = least(sample, 0, count);
            assertThat(rss[count - 1]).isCloseTo(least, within(1e-10));
        }
    }

    private static double least(Sample sample, int from, int count) {
        int n = sample.size();
        if (count == 1) {
            return n - from < 3
                    ? Double.POSITIVE_INFINITY
                    : Line.through(sample.xs(), sample.ys(), sample.ws(), from, n)
                            .rss();
        }
        double least = Double.POSITIVE_INFINITY;
        for (int to = from + 3; to <= n - 3; to++) {
            double here = Line.through(sample.xs(), sample.ys(), sample.ws(), from, to)
                    .rss();
            least = Math.min(least, here + least(sample, to, count - 1));
        }
        return least;
    }

    /** The exact optimum cannot be beaten by any place on a fine grid. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void noPlaceOnAFineGridBeatsTheJoinedOptimum(long seed) {
        Sample sample = BentLine.sample(14, seed, 0.4, 6);
        PiecewiseFit one = joined(sample, 2);
        PiecewiseFit two = joined(sample, 3);
        assertThat(two.rss()).isLessThanOrEqualTo(one.rss() + 1e-12);
        double low = sample.x(2);
        double high = sample.x(11);
        for (int i = 0; i <= 3000; i++) {
            double[] at = {low + (high - low) * i / 3000};
            assertThat(hinged(sample, at)).isGreaterThanOrEqualTo(one.rss() - 1e-12);
        }
        for (int i = 0; i <= 120; i++) {
            for (int j = i + 1; j <= 120; j++) {
                double[] at = {low + (high - low) * i / 120, low + (high - low) * j / 120};
                if (JoinedSearch.carries(sample, at, 3)) {
                    assertThat(hinged(sample, at)).isGreaterThanOrEqualTo(two.rss() - 1e-9);
                }
            }
        }
    }

    /** Least squares with hinges at given places, by Gram and Schmidt: another way than the one under test. */
    private static double hinged(Sample sample, double[] breaks) {
        int n = sample.size();
        double[] left = sample.ys();
        List<double[]> basis = new ArrayList<>();
        for (int c = 0; c < breaks.length + 2; c++) {
            double[] column = new double[n];
            for (int i = 0; i < n; i++) {
                column[i] = c == 0 ? 1 : c == 1 ? sample.x(i) : Math.max(0, sample.x(i) - breaks[c - 2]);
            }
            for (double[] other : basis) {
                takeOff(column, other);
            }
            double norm = Math.sqrt(dot(column, column));
            for (int i = 0; i < n; i++) {
                column[i] /= norm;
            }
            basis.add(column);
            takeOff(left, column);
        }
        return dot(left, left);
    }

    private static void takeOff(double[] from, double[] unit) {
        double along = dot(from, unit);
        for (int i = 0; i < from.length; i++) {
            from[i] -= along * unit[i];
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
