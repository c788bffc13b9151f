package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.reduction.events.Burn;
import java.util.ArrayList;
import java.util.List;

/**
 * Looks through a burn for everything that can be told before its events are known: whether it burned at all, burned
 * whole, and burned as one burn. Where a rejection is among the findings, no rate belongs to the firing.
 */
public final class BurnScreening {

    private static final List<BurnDetector> BURN =
            List.of(LateRise::look, SlowBurn::look, Collapse::look, Blockage::look, CaseLimit::look);

    private BurnScreening() {}

    /**
     * Screens one burn.
     *
     * @param burn what is known of the firing
     * @return what was seen, in the order of the detectors; a missing ignition stands alone, and pulses are not looked at
     *         as if they were one burn
     */
    public static List<Finding> screen(Burn burn) {
        BurnShape shape = BurnShape.of(burn);
        List<Finding> cold = Ignition.look(burn, shape);
        if (!cold.isEmpty()) {
            return cold;
        }
        boolean cut =
                burn.record().findings().stream().anyMatch(finding -> finding.code() == FindingCode.BACKWARD_TIME);
        List<Finding> seen = new ArrayList<>(cut ? List.of() : Truncation.look(burn, shape));
        List<Finding> pulses = Chuffing.look(burn, shape);
        if (!pulses.isEmpty()) {
            seen.addAll(pulses);
            seen.addAll(CaseLimit.look(burn, shape));
            return seen;
        }
        List<Finding> impossible = BurnTime.look(burn, shape);
        if (!impossible.isEmpty()) {
            // On a wrong time axis every fall looks like a burst.
            seen.addAll(impossible);
            return seen;
        }
        BURN.forEach(detector -> seen.addAll(detector.look(burn, shape)));
        return seen;
    }
}
