package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JoinedProfileTest {

    private static Sample sample(long seed) {
        return Sample.of(
                Simulated.points(24, 5e5, 1e7, Simulated.broken(2e6, 0.7, 0.1, 1), 0.02, seed),
                io.burnlaw.ratelaw.Weighting.PROPORTIONAL,
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
