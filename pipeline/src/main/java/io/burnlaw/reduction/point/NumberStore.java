package io.burnlaw.reduction.point;

import java.util.function.Supplier;

/**
 * Keeps the series of the firings until they are drawn: the numbers of a few firings fit in memory, those of some
 * thousand do not.
 */
@FunctionalInterface
public interface NumberStore {

    /** Keeps them in the memory. */
    NumberStore MEMORY = numbers -> {
        double[] kept = numbers.clone();
        return kept::clone;
    };

    /**
     * Keeps numbers; several threads may at the same time.
     *
     * @param numbers any; the array stays the caller's
     * @return gives them back, bit for bit, as a new array each time
     */
    Supplier<double[]> keep(double[] numbers);
}
