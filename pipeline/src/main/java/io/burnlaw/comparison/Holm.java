package io.burnlaw.comparison;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Holm's step-down correction: with it the chance of a single false alarm among all tests of a family stays at the level.
 *
 * <p><b>Source.</b> Holm, Scandinavian Journal of Statistics 6 (1979) 65-70.
 */
final class Holm {

    private Holm() {}

    /**
     * Adjusts p values.
     *
     * @param pValues of one family
     * @return adjusted ones, in the same order
     */
    static double[] adjust(double[] pValues) {
        int[] rising = IntStream.range(0, pValues.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> pValues[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[pValues.length];
        double most = 0;
        for (int rank = 0; rank < rising.length; rank++) {
            most = Math.max(most, Math.min(1, (rising.length - rank) * pValues[rising[rank]]));
            adjusted[rising[rank]] = most;
        }
        return adjusted;
    }
}
