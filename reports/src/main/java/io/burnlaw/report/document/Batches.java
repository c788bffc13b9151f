package io.burnlaw.report.document;

import io.burnlaw.report.document.Formulation.NotFitted;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The law of a propellant over its batches, and the prediction for the next batch.
 *
 * @param count how many batches were fired
 * @param withinStd relative standard deviation of a firing about the law of its batch [1]; absent where not estimated, as all
 *     that follows up to the members
 * @param betweenStd relative standard deviation of the batches' rates at the reference pressure [1]
 * @param differ whether a difference between batches was shown at the level
 * @param pValue of no difference [1]
 * @param exponentStd standard deviation of the batches' exponents [1]; absent where no difference was shown
 * @param moreBatches number of further batches that make the standard deviation between batches known to a factor of
 *     two; absent where no number does
 * @param law the mean of the propellant over its batches; absent where there are several regimes, whose laws then include the
 *     batches
 * @param nextLaw the same for a prediction of one firing of a batch not yet cast: its own degrees of freedom
 * @param nextBatch rates of one firing of a batch not yet cast
 * @param members the batches
 * @param sentence what it means
 * @param notEstimated why the rest is absent
 */
public record Batches(
        int count,
        @Nullable Double withinStd,
        @Nullable Quantity betweenStd,
        @Nullable Boolean differ,
        @Nullable Double pValue,
        @Nullable Double exponentStd,
        @Nullable Integer moreBatches,
        @Nullable Law law,
        @Nullable Law nextLaw,
        List<NextRate> nextBatch,
        List<BatchMember> members,
        String sentence,
        @Nullable NotFitted notEstimated) {

    public Batches {
        law = law == null ? null : law.withoutCurve();
        nextLaw = nextLaw == null ? null : nextLaw.withoutCurve();
        nextBatch = List.copyOf(nextBatch);
        members = List.copyOf(members);
    }

    /**
     * One batch of a propellant.
     *
     * @param id of the batch
     * @param points how many firings of it count
     * @param rateRatio its rate over the mean of the batches fired [1]
     * @param law of this batch: its own rate, the exponent of all; absent where there are several regimes
     */
    public record BatchMember(
            String id,
            int points,
            Quantity rateRatio,
            @Nullable Law law) {}

    /**
     * The rate of one firing of a batch not yet cast.
     *
     * @param pressure MPa, absolute
     * @param rate mm/s
     * @param low lower end of its prediction interval, mm/s
     * @param high upper end, mm/s
     */
    public record NextRate(double pressure, double rate, double low, double high) {}
}
