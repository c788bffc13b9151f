package io.burnlaw.batch;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.TDistribution;

/** Result of a fit to the points of several batches. */
public sealed interface BatchResult {

    /**
     * There is no law over batches.
     *
     * @param advice a sentence that says what would mend it
     */
    record NotFitted(String reason, String advice) implements BatchResult {}

    /**
     * The law of a formulation over its batches. Three answers, kept apart: the mean law, the law of a batch that was
     * fired, and one firing of a batch not yet cast.
     *
     * @param law          the mean over batches. Its variances include the batches; its residual scatter is that of one
     *                     firing of any batch about it; its degrees of freedom are those of the rate at the reference
     *                     pressure
     * @param next         the same with the degrees of freedom of one firing of a batch not yet cast: its prediction
     *                     interval is that firing's
     * @param exponent     interval of the exponent, at the level
     * @param withinStd    of a firing about the law of its batch, relative [1]
     * @param betweenStd   of the batches' rates about the mean law at the reference pressure, relative [1]
     * @param betweenLow   lower end of its interval [1]
     * @param betweenHigh  upper end [1]
     * @param level        of the intervals and of the test [1]
     * @param pValue       of no difference between batches [1]
     * @param slopeStd     of the batches' exponents [1]; zero where the points do not show that they differ
     * @param moreBatches  how many more batches make the between-batch deviation known to a factor of two either way;
     *                     empty where no number of batches like these does
     * @param members      the batches, in the order of their ids
     */
    public record BatchLaw(
            RateLaw law,
            RateLaw next,
            Interval.Estimated exponent,
            double withinStd,
            double betweenStd,
            double betweenLow,
            double betweenHigh,
            double level,
            double pValue,
            double slopeStd,
            OptionalInt moreBatches,
            List<Member> members)
            implements BatchResult {

        /**
         * One batch.
         *
         * @param points how many firings it has
         * @param law    of this batch: its own rate, the exponent of all
         * @param ratio  of its rate to the mean of the batches measured [1]
         * @param low    lower end of the ratio's interval [1]
         * @param high   upper end [1]
         */
        public record Member(String id, int points, RateLaw law, double ratio, double low, double high) {}

        public BatchLaw {
            members = List.copyOf(members);
        }

        /** {@return whether batches differ, with the false alarm that the level leaves} */
        public boolean differ() {
            return pValue < 1 - level;
        }

        static double t(double freedom, double level) {
            return TDistribution.of(Math.max(1, freedom)).inverseCumulativeProbability(0.5 + level / 2);
        }
    }
}
