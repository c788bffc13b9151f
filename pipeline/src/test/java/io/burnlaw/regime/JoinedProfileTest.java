package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.regime.BreakProfile.JoinedProfile;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JoinedProfileTest {

    private static Sample sample(long seed) {
        return Sample.of(
                Simulated.points(24, 5e5, 1e7, Simulated.broken(2e6, 0.7, 0.1, 1), 0.02, seed),
                io.burnlaw.campaign.Weighting.PROPORTIONAL,
                0);
    }

    private static PiecewiseFit joined(Sample sample, int laws) {
        double[][] breaks = new JoinedSearch(sample, laws, 3).best(sample.ys()).breaks();
        return JoinedFit.of(sample, sample.ys(), breaks[laws - 1], 3);
    }

    /** With one break there is no other to move: the profile is exact, and the optimum is its lowest place. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theProfileOfOneBreakHasItsFootAtTheOptimum(long seed) {
        Sample sample = sample(seed);
        PiecewiseFit fit = joined(sample, 2);
        Profile profile = new JoinedProfile(sample, fit, 0, 3).of(sample.ys());
        int at = profile.nearest(fit.breaks()[0]);
        assertThat(profile.places()[at]).isEqualTo(fit.breaks()[0]);
        // both are sums of squares of some 24 terms: 1e-9 of it is rounding
        assertThat(profile.least()[at] / fit.rss()).isCloseTo(1, within(1e-9));
        assertThat(Arrays.stream(profile.least()).min().orElseThrow() / fit.rss())
                .isCloseTo(1, within(1e-9));
    }

    @Test
    void ofMoreGapsThanCanBeTriedTheOptimumIsStillAPlace() {
        SplittableRandom random = new SplittableRandom(4);
        int n = 1000;
        double[] x = IntStream.range(0, n).mapToDouble(i -> i / (n - 1.0)).toArray();
        double[] y = Arrays.stream(x)
                .map(at -> Math.max(0, at - 0.4) + 0.05 * random.nextGaussian())
                .toArray();
        Sample sample = Sample.of(x, y);
        PiecewiseFit fit = joined(sample, 2);
        Profile profile = new JoinedProfile(sample, fit, 0, 3).of(sample.ys());
        assertThat(profile.places()).hasSize(4000).contains(fit.breaks()[0]).isSorted();
        // sums of a thousand terms: 1e-9 of it is rounding
        assertThat(profile.least()[profile.nearest(fit.breaks()[0])] / fit.rss())
                .isCloseTo(1, within(1e-9));
        // the widest step between places is two gaps
        assertThat(IntStream.range(1, 4000)
                        .mapToDouble(i -> profile.places()[i] - profile.places()[i - 1])
                        .max()
                        .orElseThrow())
                .isLessThan(2.0 / n);
    }

    /** To first order: with two breaks no place may be better than the optimum by more than the others' curvature. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void withTwoBreaksTheFittedValuesAtAPlaceHaveItsSumOfSquares(long seed) {
        Sample sample = sample(seed);
        PiecewiseFit fit = joined(sample, 3);
        for (int which = 0; which < 2; which++) {
            JoinedProfile profiles = new JoinedProfile(sample, fit, which, 3);
            Profile profile = profiles.of(sample.ys());
            assertThat(profile.least()[profile.nearest(fit.breaks()[which])])
                    .isLessThanOrEqualTo(fit.rss() * 1.0000001);
            for (int e = 0; e < profile.places().length; e++) {
                double[] fitted = profiles.fitted(sample.ys(), e);
                double rss = 0;
                for (int i = 0; i < sample.size(); i++) {
                    rss += sample.w(i) * Math.pow(sample.ys()[i] - fitted[i], 2);
                }
                assertThat(rss).isCloseTo(profile.least()[e], within(1e-12));
            }
        }
    }
}
