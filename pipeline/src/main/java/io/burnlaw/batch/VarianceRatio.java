package io.burnlaw.batch;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * The variance between batches over that within, by the F statistic of batches that may differ in size: what is left of the
 * sum of squares about one law and the batches, over what batches of their own leave.
 *
 * @param groups  the batches, their variances within known but for a factor
 * @param rss     sum of squares where each batch has a level of its own
 * @param freedom degrees of freedom of that
 */
record VarianceRatio(List<MixedModel.Group> groups, double rss, int freedom) {

    /**
     * The ratio for groups of a fit.
     *
     * @param within  variance within a batch, beside what each point adds of its own
     * @param typical variance of a typical point
     */
    static VarianceRatio of(List<MixedModel.Group> groups, double within, double typical, int freedom) {
        List<MixedModel.Group> weighed = groups.stream()
                .map(g -> new MixedModel.Group(
                        g.x(),
                        new double[][] {g.z()[0]},
                        g.y(),
                        Arrays.stream(g.v()).map(v -> (within + v) / typical).toArray(),
                        new double[g.y().length]))
                .toList();
        return new VarianceRatio(weighed, squares(weighed, 1e12), freedom);
    }

    /** {@return probability of so large a statistic if batches do not differ [1]} */
    double pValue() {
        return distribution().survivalProbability(statistic(0));
    }

    /** The ratio at which the statistic, which falls with it, has this quantile; zero where it never is so large. */
    double at(double probability) {
        double value = distribution().inverseCumulativeProbability(probability);
        if (statistic(0) <= value) {
            return 0;
        }
        double low = -25;
        double high = 20;
        for (int round = 0; round < 60; round++) {
            double middle = (low + high) / 2;
            if (statistic(StrictMath.exp(middle)) > value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return StrictMath.exp((low + high) / 2);
    }

    private FDistribution distribution() {
        return FDistribution.of(groups.size() - 1, freedom);
    }

    private double statistic(double psi) {
        return Math.max(0, squares(groups, psi) - rss) / (groups.size() - 1) / (Math.max(rss, 1e-30) / freedom);
    }

    /** About one law and batches with psi times the variance within. */
    private static double squares(List<MixedModel.Group> groups, double psi) {
        return MixedModel.sumOfSquares(groups, new double[] {1, psi});
    }
}
