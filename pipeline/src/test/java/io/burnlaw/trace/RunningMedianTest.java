package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RunningMedianTest {

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 8, 9, 10, 500})
    void eachIsTheMiddleOfItsSortedWindow(int size) {
        SplittableRandom random = new SplittableRandom(size);
        for (int round = 0; round < 20; round++) {
            boolean repeats = round % 2 == 0;
            double[] x = random.doubles(size)
                    .map(value -> repeats ? Math.rint(4 * value) : value)
                    .toArray();
            assertThat(RunningMedian.ofFive(x)).containsExactly(sorted(x, 2));
            assertThat(RunningMedian.ofNine(x)).containsExactly(sorted(x, 4));
        }
    }

    private static double[] sorted(double[] x, int half) {
        double[] median = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            int reach = Math.min(half, Math.min(i, x.length - 1 - i));
            double[] window = Arrays.copyOfRange(x, i - reach, i + reach + 1);
            Arrays.sort(window);
            median[i] = window[reach];
        }
        return median;
    }
}
