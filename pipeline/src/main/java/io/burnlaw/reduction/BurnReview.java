package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import java.util.List;
import java.util.function.Function;

/**
 * Looks through a finished reduction: what its tail-off, the course of its rates and its numbers say of the motor and of
 * the log. What can only be seen beside other firings is in {@link CampaignPlausibility}.
 */
final class BurnReview {

    private static final List<Function<BurnReduction, List<Finding>>> REVIEWS = List.of(
            BurnedBefore::look,
            UnevenWeb::look,
            ThroatReview::look,
            BurnReview::hump,
            RecordAgainstGrain::look,
            MassReview::look,
            VelocityReview::look);

    private BurnReview() {}

    /**
     * Reviews a burn.
     *
     * @param reduction of it
     * @return what was seen, in the order of the reviews
     */
    static List<Finding> of(BurnReduction reduction) {
        return REVIEWS.stream()
                .flatMap(review -> review.apply(reduction).stream())
                .toList();
    }

    private static List<Finding> hump(BurnReduction reduction) {
        return reduction.hump().map(hump -> hump.told(reduction)).stream().toList();
    }
}
