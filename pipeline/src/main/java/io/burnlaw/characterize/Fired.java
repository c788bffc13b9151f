package io.burnlaw.characterize;

import io.burnlaw.campaign.Firing;
import io.burnlaw.reduction.Reduction;

/**
 * A firing that gave a rate, with its row of the log.
 *
 * @param row     as logged
 * @param reduced as reduced
 */
record Fired(Firing row, Reduction.Reduced reduced) {}
