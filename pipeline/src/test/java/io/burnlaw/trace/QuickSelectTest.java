package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuickSelectTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 25, 255, 256, 257, 512, 513, 1000, 20_001})
    void everyRankIsThatOfTheSortedValues(int size) {
        SplittableRandom random = new SplittableRandom(size);
        agree(random.doubles(size).toArray());
        agree(random.doubles(size).map(x -> Math.rint(5 * x)).toArray());
        agree(random.doubles(size).sorted().toArray());
        agree(new double[size]);
    }

    @Test
    void farValuesAndClustersDoNotMatter() {
        SplittableRandom random = new SplittableRandom(3);
        agree(DoubleStream.concat(random.doubles(3000), DoubleStream.of(1e300, -1e300, 1e12))
                .toArray());
        agree(random.doubles(3000).map(x -> StrictMath.exp(600 * x - 300)).toArray());
        agree(DoubleStream.concat(random.doubles(2000), random.doubles(2000).map(x -> 1 + 1e-15 * x))
                .toArray());
    }

    @Test
    void onlyTheStretchCountsAndItIsLeftAsItWas() {
        double[] values = new SplittableRandom(4).doubles(3000).toArray();
        double[] before = values.clone();
        double[] sorted = Arrays.copyOfRange(values, 100, 2100);
        Arrays.sort(sorted);
        assertThat(QuickSelect.at(values, 100, 2100, 700)).isEqualTo(sorted[700]);
        assertThat(values).containsExactly(before);
    }

    private static void agree(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int step = Math.max(1, values.length / 50);
        for (int rank = 0; rank < values.length; rank += step) {
            assertThat(QuickSelect.at(values, 0, values.length, rank)).isEqualTo(sorted[rank]);
        }
        assertThat(QuickSelect.at(values, 0, values.length, values.length - 1)).isEqualTo(sorted[values.length - 1]);
    }
}
