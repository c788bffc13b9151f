package io.burnlaw.comparison;

import io.burnlaw.quantity.NumberFormat;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.statistics.distribution.TDistribution;

/** Two propellants that were cast once each: whatever they differ by may be the castings. */
final class OneBatchEach {

    /** Between batches of one formulation [1]; common practice, no source. */
    private static final double USUAL_BETWEEN = 0.02;

    private static final int MOST_BATCHES = 30;

    private OneBatchEach() {}

    static boolean is(Propellant baseline, Propellant candidate) {
        return named(baseline) == 1 && named(candidate) == 1;
    }

    private static int named(Propellant propellant) {
        Set<String> batches = new HashSet<>(propellant.batches().values());
        return batches.size();
    }

    /**
     * The same numbers with what they do not show.
     *
     * @param numbers of the comparison, as if the castings were alike
     * @param options its level and power
     * @return without a difference, and with the batches that would show one
     */
    static Comparison.Compared judged(Comparison.Compared numbers, ComparisonOptions options) {
        double size = Math.abs(StrictMath.log(numbers.typical().value()));
        int batches = batches(size, numbers.scatter(), options);
        String told = batches > MOST_BATCHES
                ? "more than %d batches of each would tell".formatted(MOST_BATCHES)
                : "%d batches of each would tell".formatted(batches);
        return numbers.with(
                false,
                "%s and %s were cast once each: batch and additive cannot be told apart. If batches scatter by %s (common practice, no source), %s a change of this size. As if both castings were alike: %s"
                        .formatted(
                                numbers.candidate(),
                                numbers.baseline(),
                                NumberFormat.percent(USUAL_BETWEEN, 1),
                                told,
                                numbers.verdict()));
    }

    /** Of three firings each, until a two-sided t test of the batches' means finds the change with the stated power. */
    private static int batches(double size, double within, ComparisonOptions options) {
        double std = Math.hypot(USUAL_BETWEEN, within / Math.sqrt(3));
        for (int n = 2; n <= MOST_BATCHES; n++) {
            TDistribution t = TDistribution.of(2.0 * n - 2);
            double need = t.inverseCumulativeProbability(0.5 + options.level() / 2)
                    + t.inverseCumulativeProbability(options.power());
            if (size >= need * std * Math.sqrt(2.0 / n)) {
                return n;
            }
        }
        return MOST_BATCHES + 1;
    }
}
