package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A strand burned in a vessel, with a record that is reduced: one row of strands.csv.
 *
 * @param id              unique in the campaign
 * @param trace           path of the record below the campaign folder
 * @param length          between the break wires, or of the whole strand where there are none [m]
 * @param wireTimes       times of the break wires [s, on the record's axis]; empty where the pressure rise times the burn
 * @param temperature     of the strand [K]
 * @param ambientPressure on the day [Pa, absolute]
 * @param setAside        why it is not to be used; empty where it is
 * @param row             line of the table, for messages
 */
public record Strand(
        String id,
        String formulation,
        String trace,
        Measured length,
        List<Double> wireTimes,
        OptionalDouble temperature,
        double ambientPressure,
        Optional<String> setAside,
        Optional<String> note,
        TraceSettings settings,
        int row) {

    public Strand {
        wireTimes = List.copyOf(wireTimes);
    }
}
