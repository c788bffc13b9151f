package io.burnlaw.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import org.junit.jupiter.api.Test;

class RandomnessTest {

    @Test
    @Oracle(
            value = "java.util.SplittableRandom, which is SplitMix64 too: the same stream from the same state",
            agreement = "exact")
    void theStreamIsSplitMix() {
        Randomness ours = Randomness.of(7, "");
        long state = stateOf(7);
        java.util.SplittableRandom library = new java.util.SplittableRandom(state);
        for (int i = 0; i < 100; i++) {
            assertThat(ours.nextLong()).isEqualTo(library.nextLong());
        }
    }

    /** The finalizer of SplitMix64 (Stafford's variant 13) on the seed, as for an empty purpose. */
    private static long stateOf(long seed) {
        long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    @Test
    void normalNumbersHaveMomentsOfTheNormalDistribution() {
        Randomness random = Randomness.of(1, "moments");
        int n = 200_000;
        double first = 0;
        double second = 0;
        double fourth = 0;
        for (int i = 0; i < n; i++) {
            double x = random.nextGaussian();
            first += x / n;
            second += x * x / n;
            fourth += x * x * x * x / n;
        }
        // four standard errors: 1, sqrt(2) and sqrt(96) over sqrt(n)
        assertThat(first).isCloseTo(0, within(4 / Math.sqrt(n)));
        assertThat(second).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
        assertThat(fourth).isCloseTo(3, within(4 * Math.sqrt(96.0 / n)));
    }

    @Test
    void streamsOfDifferentPurposesDiffer() {
        assertThat(Randomness.of(1, "a").nextLong())
                .isNotEqualTo(Randomness.of(1, "b").nextLong());
        assertThat(Randomness.of(1, "ab").nextLong())
                .isNotEqualTo(Randomness.of(1, "ba").nextLong());
    }
}
