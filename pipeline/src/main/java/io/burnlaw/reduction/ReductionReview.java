package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import java.util.List;

/** Looks over a finished reduction for what its numbers give away. */
public final class ReductionReview {

    private ReductionReview() {}

    /**
     * Reviews one reduction.
     *
     * @param burn    what was known of the firing
     * @param reduced what was made of it
     * @return what was seen; the reduction itself is left alone
     */
    public static List<Finding> review(Burn burn, Reduction.Reduced reduced) {
        return List.of();
    }
}
