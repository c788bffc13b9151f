package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A rate-pressure point that was measured directly: a strand, or a burn timed by eye.
 *
 * @param id          unique in the campaign
 * @param formulation id of the propellant
 * @param pressure    [Pa, absolute]
 * @param rate        [m/s], as stated or as length over time, with its uncertainty
 * @param temperature of the sample [K]
 * @param setAside    why it is not to be used; empty where it is
 * @param note        the log's remark
 * @param row         line of the table, for messages
 */
public record DirectPoint(
        String id,
        String formulation,
        Measured pressure,
        Measured rate,
        OptionalDouble temperature,
        Optional<String> setAside,
        Optional<String> note,
        int row) {}
