package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import java.util.List;

/**
 * Looks through a burn for everything that can be told before its events are known: whether it burned at all, burned
 * whole, and burned as one burn. Where a rejection is among the findings, no rate belongs to the firing.
 */
public final class BurnScreening {

    private static final List<BurnDetector> AFTER_IGNITION = List.of(Truncation::look, CaseLimit::look);

    private BurnScreening() {}

    /**
     * Screens one burn.
     *
     * @param burn what is known of the firing
     * @return what was seen, in the order of the detectors; a missing ignition stands alone
     */
    public static List<Finding> screen(Burn burn) {
        BurnShape shape = BurnShape.of(burn);
        List<Finding> cold = Ignition.look(burn, shape);
        return cold.isEmpty()
                ? AFTER_IGNITION.stream()
                        .flatMap(detector -> detector.look(burn, shape).stream())
                        .toList()
                : cold;
    }
}
