package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.List;

/** Whether the record ends before the motor does. */
final class Truncation {

    /** Below this share of the peak the web has burned out, whatever the grain [1]. */
    private static final double BURNT_OUT = 0.3;

    private Truncation() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        int last = shape.size() - 1;
        double left = shape.smooth()[last];
        if (left < BURNT_OUT * shape.peak()) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.TRUNCATED,
                Sentence.of(
                        "The record ends at %.4g s with %.3g MPa gauge still in the chamber, %.0f %% of its peak: the web"
                                + " burnout is not in it.",
                        shape.time()[last], left / 1e6, 100 * left / shape.peak()),
                shape.time()[last]));
    }
}
