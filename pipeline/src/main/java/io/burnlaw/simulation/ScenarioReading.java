package io.burnlaw.simulation;

import io.burnlaw.campaign.Problem;
import java.util.List;
import java.util.function.Function;

/** What reading a scenario gave: the scenario, or all that stands against it. */
public sealed interface ScenarioReading {

    /**
     * It can be simulated.
     *
     * @param scenario as read
     */
    record Read(Scenario scenario) implements ScenarioReading {}

    /**
     * It cannot be simulated.
     *
     * @param problems all of them
     */
    record Unusable(List<Problem> problems) implements ScenarioReading {
        public Unusable {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("an unusable scenario names at least one problem");
            }
        }
    }

    /**
     * Answers for both cases.
     *
     * @param read     the answer where it was read
     * @param unusable the answer where it was not
     * @param <T>      of the answer
     * @return the answer
     */
    default <T> T match(Function<Read, T> read, Function<Unusable, T> unusable) {
        return this instanceof Read r ? read.apply(r) : unusable.apply((Unusable) this);
    }
}
