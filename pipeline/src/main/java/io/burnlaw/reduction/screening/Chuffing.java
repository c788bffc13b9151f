package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Whether the burn came in separate pulses. */
final class Chuffing {

    private static final double CLEAR = 12;

    private Chuffing() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        Pulses pulses = Pulses.between(shape, 0, shape.size(), CLEAR * shape.smoothStd());
        return pulses.count() >= Pulses.CHUFFING ? List.of(told(pulses, shape)) : List.of();
    }

    static Finding told(Pulses pulses, BurnShape shape) {
        return Finding.at(
                FindingCode.CHUFFING,
                Sentence.of(
                        "%d pulses between %.4g s and %.4g s, %.3g per second (median interval), %.3g kPa gauge high"
                                + " (median).",
                        pulses.count(),
                        pulses.tops().get(0),
                        pulses.tops().get(pulses.count() - 1),
                        pulses.frequency(),
                        pulses.height() / 1e3),
                pulses.tops().get(0));
    }
}
