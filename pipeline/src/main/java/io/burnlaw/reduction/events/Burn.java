package io.burnlaw.reduction.events;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.grain.Grain;
import io.burnlaw.trace.ConditionedTrace;

/**
 * All inputs of the reduction of one firing.
 *
 * @param firing   the row of the log
 * @param hardware what the case can stand
 * @param record   the conditioned record, with a pressure: recorded, or derived from thrust
 */
public record Burn(Firing firing, Formulation formulation, Hardware hardware, Grain grain, ConditionedTrace record) {

    public Burn {
        if (!record.trace().hasPressure()) {
            throw new IllegalArgumentException(
                    "firing " + firing.id() + " has no pressure, neither recorded nor derived");
        }
    }
}
