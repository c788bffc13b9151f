package io.burnlaw.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuietStepTest {

    private static final double RANGE = 1000;

    private static double[] noise(int n, double std, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = std * random.nextGaussian();
        }
        return values;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5, 0.8})
    void aStepOfTwiceTheNoiseIsFoundWhereItIs(double share) {
        for (long seed = 0; seed < 50; seed++) {
            double[] values = noise(600, 2, seed);
            int at = (int) (share * values.length);
            for (int i = at; i < values.length; i++) {
                values[i] += 4;
            }
            // Blocks of ten samples: one of them may lie across the step.
            assertEquals(at, QuietStep.cut(values, values.length, RANGE), 20, "seed " + seed);
        }
    }

    @Test
    void noiseAloneHasNoStep() {
        int cut = 0;
        for (long seed = 0; seed < 2000; seed++) {
            cut += QuietStep.cut(noise(600, 2, seed), 600, RANGE) < 600 ? 1 : 0;
        }
        // Six standard deviations by an estimate from sixty blocks: some chance is left, below one in a thousand.
        assertTrue(cut <= 2, cut + " of 2000");
    }

    @Test
    void aZeroThatDriftsHasNoStep() {
        for (long seed = 0; seed < 200; seed++) {
            double[] values = noise(600, 2, seed);
            for (int i = 0; i < values.length; i++) {
                values[i] += 0.05 * i;
            }
            assertEquals(600, QuietStep.cut(values, 600, RANGE), "seed " + seed);
        }
    }

    @Test
    void wildSamplesAreNoStep() {
        double[] values = noise(600, 2, 3);
        // at most two in a block of ten
        for (int i = 300; i < 600; i += 5) {
            values[i] += 500;
        }
        assertEquals(600, QuietStep.cut(values, 600, RANGE));
    }

    @Test
    void theEndOfASmoulderBehindTheBurnIsFoundAndAWarmedSensorIsNone() {
        for (int seed = 0; seed < 200; seed++) {
            double[] smoulder = noise(600, 2, seed);
            double[] warmed = smoulder.clone();
            double[] jumped = smoulder.clone();
            for (int i = 0; i < 600; i++) {
                smoulder[i] += i < 400 ? 0.006 * RANGE : 0;
                warmed[i] += 0.02 * RANGE * StrictMath.exp(-i / 120.0);
                // a zero that stays where it jumped to is no end of burning
                jumped[i] += i < 400 ? 0.006 * RANGE : 0.003 * RANGE;
            }
            assertEquals(400, QuietStep.end(smoulder, 0, 0, RANGE).orElseThrow(), 10, "seed " + seed);
            assertTrue(QuietStep.end(warmed, 0, 0, RANGE).isEmpty(), "seed " + seed);
            assertTrue(QuietStep.end(jumped, 0, 0, RANGE).isEmpty(), "seed " + seed);
        }
    }
}
