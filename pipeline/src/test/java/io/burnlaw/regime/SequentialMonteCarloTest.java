package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SequentialMonteCarloTest {

    private static final int MOST = 999;
    private static final double ERROR = 0.05;

    /** Exceedances that come with a fixed chance, as those of a test whose true p value is that chance. */
    private static SimulatedP run(double chance, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] exceedances = {0};
        return SequentialMonteCarlo.run(
                MOST,
                ERROR,
                b -> exceedances[0] += random.nextDouble() < chance ? 1 : 0,
                b -> (exceedances[0] + 1.0) / (b + 1));
    }

    @ParameterizedTest
    @CsvSource({"0, 199, true", "0.3, 99, false", "1, 99, false"})
    void aClearAnswerNeedsFewCampaigns(double chance, int campaigns, boolean rejected) {
        SimulatedP p = run(chance, 5);
        assertThat(p.campaigns()).isEqualTo(campaigns);
        assertThat(p.rejectsAt(ERROR)).isEqualTo(rejected);
    }

    @Test
    void aCloseAnswerTakesAllCampaigns() {
        long all = java.util.stream.LongStream.range(0, 100)
                .filter(seed -> run(ERROR, seed).campaigns() == MOST)
                .count();
        assertThat(all).isGreaterThan(90);
    }

    @Test
    void theTestKeepsItsLevel() {
        SplittableRandom truth = new SplittableRandom(1);
        int campaigns = 20_000;
        int rejected = 0;
        for (int c = 0; c < campaigns; c++) {
            // under the hypothesis the p value is uniform
            rejected += run(truth.nextDouble(), c).rejectsAt(ERROR) ? 1 : 0;
        }
        // four standard errors of a share of 5 %
        assertThat((double) rejected / campaigns).isBetween(0.0438, 0.0562);
    }

    @Test
    void aPValueIsNeverSaidSmallerThanItsCampaignsCanShow() {
        assertThat(new SimulatedP(0.005, 199).words()).isEqualTo("p ≤ 0.005");
        assertThat(new SimulatedP(0.38, 99).words()).isEqualTo("p = 0.38");
    }
}
