package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Whether the record begins after the motor, or ends before it. */
final class Truncation {

    /** Below this share of the peak the web has burned out, whatever the grain [1]. */
    private static final double BURNT_OUT = 0.3;

    /** A record that begins above this share of the main burn's level has no ignition in it [1]. */
    private static final double ALIGHT = 0.6;

    private Truncation() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        if (shape.smooth()[0] > ALIGHT * shape.level()) {
            return List.of(Finding.at(
                            FindingCode.NO_QUIET_PART,
                            Sentence.of(
                                    "The record begins at %.4g s with %.3g MPa gauge in the chamber, %.0f %% of the main"
                                            + " burn's level: the ignition is not in it, and nobody knows how much web"
                                            + " had burned.",
                                    shape.time()[0], shape.smooth()[0] / 1e6, 100 * shape.smooth()[0] / shape.level()),
                            shape.time()[0])
                    .withSeverity(Severity.REJECTION));
        }
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
