package io.burnlaw.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class WorkingLevelTest {

    /** 40 samples of an igniter's spike of 240, then 1,000 samples at 25, then nothing; the zero is 5. */
    private static double[] slow() {
        double[] values = new double[2_000];
        Arrays.fill(values, 100, 140, 240);
        Arrays.fill(values, 140, 1_140, 25);
        for (int i = 0; i < values.length; i++) {
            values[i] += 5;
        }
        return values;
    }

    @Test
    void aSpikeIsLeftOutAndAnEvenBurnIsNot() {
        // nine tenths of 34,600 from within the spike (its 8th sample) to the 931st at 25: 0.9 * 34,600 / 962 * 3
        assertEquals(97, WorkingLevel.of(slow(), 5, 240), 1);
        double[] even = slow();
        Arrays.fill(even, 100, 140, 30);
        assertEquals(25, WorkingLevel.of(even, 5, 25));
    }

    @Test
    void aRecordOfNothingHasNoSpike() {
        assertEquals(3, WorkingLevel.of(new double[50], 0, 3));
        assertEquals(3, WorkingLevel.of(new double[0], 0, 3));
    }
}
