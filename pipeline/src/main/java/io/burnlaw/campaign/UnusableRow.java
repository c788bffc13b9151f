package io.burnlaw.campaign;

import java.util.List;

/**
 * A row of the log that describes no firing that could be reduced; the others go on without it.
 *
 * @param id          of the firing
 * @param formulation id of the propellant as written, empty text where even that is missing
 * @param problems    what is wrong with it, at least one
 */
public record UnusableRow(String id, String formulation, List<Problem> problems) {

    public UnusableRow {
        problems = List.copyOf(problems);
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("a row is unusable for at least one reason: " + id);
        }
    }
}
