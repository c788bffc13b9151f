package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.JoinedFit.HingeSolver;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Weights by their formula, which pieces may carry a law, and sums over all places by going through them. */
class SampleAndSearchTest {

    private static FitPoint point(String cluster, double lnPressure, double lnRate, double own, double ofPressure) {
        double pressure = Math.exp(lnPressure);
        double rate = Math.exp(lnRate);
        return new FitPoint(
                cluster + lnPressure,
                cluster,
                pressure,
                pressure * ofPressure,
                rate,
                rate * Math.hypot(own, 0.01),
                0.01);
    }

    @Test
    void measuredWeightsAreInverseEffectiveVariances() {
        // on a line of slope 0.5, so that the unweighted slope is exact
        double[] own = {0.01, 0.02, 0.03, 0.01};
        double[] ofPressure = {0, 0.02, 0.04, 0.06};
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            points.add(point("f" + i, 14 + i, -5 + 0.5 * i, own[i], ofPressure[i]));
        }
        Sample sample = Sample.of(points, Weighting.MEASURED, 0.002);
        // in 1e-4: 1, 4 + 1, 9 + 4, 1 + 9
        double[] inverse = {1, 1 / 5.0, 1 / 13.0, 1 / 10.0};
        double mean = (1 + 1 / 5.0 + 1 / 13.0 + 1 / 10.0) / 4;
        for (int i = 0; i < 4; i++) {
            assertThat(sample.w(i)).isCloseTo(inverse[i] / mean, within(1e-9));
            assertThat(sample.x(i)).isCloseTo(i - 1.5, within(1e-12));
            assertThat(sample.pressure(sample.x(i)) / points.get(i).pressure()).isCloseTo(1, within(1e-12));
            assertThat(sample.position(points.get(i).pressure())).isCloseTo(i - 1.5, within(1e-12));
        }
        assertThat(sample.knownScatter().getAsDouble()).isCloseTo(0.01 / Math.sqrt(mean), within(1e-9));
        // the larger of the points' shared part and the floor
        assertThat(sample.systematic()).isCloseTo(0.01, within(1e-15));
        assertThat(Sample.of(points, Weighting.MEASURED, 0.02).systematic()).isEqualTo(0.02);
        assertThat(Sample.of(points, Weighting.PROPORTIONAL, 0).knownScatter()).isEmpty();
        Sample constant = Sample.of(points, Weighting.CONSTANT, 0);
        // as the square of the rate: e a step
        assertThat(constant.w(3) / constant.w(2)).isCloseTo(Math.E, within(1e-9));
    }

    @Test
    void aLawIsCarriedByFiringsAndPressuresEnough() {
        List<FitPoint> four = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            four.add(point("f" + i / 2, 14 + 0.1 * i, -5, 0.01, 0));
        }
        Sample sample = Sample.of(four, Weighting.PROPORTIONAL, 0);
        assertThat(sample.carries(0, 3, 3)).isTrue();
        assertThat(sample.carries(0, 2, 3)).isFalse();
        // two points of one firing, of four that there are
        assertThat(sample.carries(0, 2, 2)).isFalse();
        assertThat(sample.carries(1, 3, 2)).isTrue();
        Sample three = Sample.of(four.subList(0, 6), Weighting.PROPORTIONAL, 0);
        assertThat(three.carries(0, 2, 2)).isTrue();
        List<FitPoint> level = new ArrayList<>(four);
        level.add(point("g", 14, -5, 0.01, 0));
        Sample repeated = Sample.of(level, Weighting.PROPORTIONAL, 0);
        assertThat(repeated.carries(0, 2, 2)).isFalse();
        assertThat(repeated.carries(0, 3, 2)).isTrue();
        assertThat(repeated.steps()).containsExactly(2, 3, 4, 5, 6, 7, 8);
    }

    /** The third point to the third from the end, and three places in each gap between: 4·(n - 5) + 1 of them. */
    private static double[] places(Sample sample) {
        int n = sample.size();
        List<Double> places = new ArrayList<>();
        for (int i = 2; i < n - 3; i++) {
            for (int j = 0; j < 4; j++) {
                places.add(sample.x(i) + j * (sample.x(i + 1) - sample.x(i)) / 4);
            }
        }
        places.add(sample.x(n - 3));
        return places.stream().mapToDouble(each -> each).toArray();
    }

    private static double hinged(Sample sample, double at) {
        double[] ones = new double[sample.size()];
        double[] hinge = new double[sample.size()];
        for (int i = 0; i < ones.length; i++) {
            ones[i] = 1;
            hinge[i] = Math.max(0, sample.x(i) - at);
        }
        return new HingeSolver(sample.ys(), sample.ws())
                .solve(new double[][] {ones, sample.xs(), hinge})
                .rss();
    }

    @Test
    void theGridAndTheMeanOverItAreThoseOfAllItsPlaces() {
        for (long seed = 1; seed <= 6; seed++) {
            Sample sample = BentLine.sample(10, seed, 0.25, 5);
            int n = sample.size();
            JoinedSearch search = new JoinedSearch(sample, 2, 3);
            double single = search.rss(sample.ys(), 1);
            double least = Double.POSITIVE_INFINITY;
            double mean = 0;
            double[] places = places(sample);
            for (double at : places) {
                double rss = hinged(sample, at);
                least = Math.min(least, rss);
                mean += Math.pow(single / rss, n / 2.0) / places.length;
            }
            assertThat(search.rss(sample.ys(), 2)).isCloseTo(least, within(1e-9));
            // Andrews and Ploberger (1994): the likelihood ratio, averaged over the places; terms below e^-25 of the
            // largest are left out
            assertThat(search.meanLikelihoodRatio(sample.ys(), 2, single)).isCloseTo(Math.log(mean), within(1e-8));
            double found = search.best(sample.ys()).breaks()[1][0];
            assertThat(hinged(sample, found)).isCloseTo(least, within(1e-9));
        }
    }

    @Test
    void whereTwoLawsHaveNotPointsEnoughThereAreNone() {
        Sample sample = BentLine.sample(10, 1, 0.25, 5);
        JoinedSearch search = new JoinedSearch(sample, 2, 6);
        assertThat(search.rss(sample.ys(), 2)).isInfinite();
        assertThat(search.meanLikelihoodRatio(sample.ys(), 2, 1)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(search.best(sample.ys()).breaks()[1]).isEmpty();
        assertThat(new JoinedSearch(sample, 2, 5).rss(sample.ys(), 2)).isFinite();
    }

    @Test
    void whatAFittedBrokenLineSaysOfItselfFitsTogether() {
        for (long seed = 21; seed <= 24; seed++) {
            Sample sample = BentLine.sample(16, seed, 0.25, 5);
            double[][] start = new JoinedSearch(sample, 3, 3).best(sample.ys()).breaks();
            PiecewiseFit fit = JoinedFit.of(sample, sample.ys(), start[2], 3);
            double sum = 0;
            for (int i = 0; i < sample.size(); i++) {
                int piece = sample.x(i) < fit.breaks()[0] ? 0 : sample.x(i) < fit.breaks()[1] ? 1 : 2;
                double value = fit.levels()[piece] + fit.slopes()[piece] * sample.x(i);
                assertThat(fit.fitted()[i]).isCloseTo(value, within(1e-10));
                assertThat(i).isGreaterThanOrEqualTo(fit.starts()[piece]).isLessThan(fit.end(piece));
                sum += Math.pow(sample.ys()[i] - value, 2);
            }
            assertThat(fit.rss()).isCloseTo(sum, within(1e-10));
            // the pieces meet
            for (int j = 0; j < 2; j++) {
                double at = fit.breaks()[j];
                assertThat(fit.levels()[j + 1] + fit.slopes()[j + 1] * at)
                        .isCloseTo(fit.levels()[j] + fit.slopes()[j] * at, within(1e-10));
            }
            assertThat(JoinedSearch.carries(sample, fit.breaks(), 3)).isTrue();
            assertThat(JoinedSearch.carries(sample, new double[] {sample.x(1), sample.x(9)}, 3))
                    .isFalse();
            assertThat(JoinedSearch.carries(sample, new double[] {sample.x(2), sample.x(13)}, 3))
                    .isTrue();
        }
    }
}
