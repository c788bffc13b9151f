package io.burnlaw.grain;

import java.util.List;
import java.util.function.Function;

/** What a description gave: a grain, or the reasons why none such can exist. */
public sealed interface GrainBuilding {

    /**
     * It can exist.
     *
     * @param grain its geometry
     */
    record Built(Grain grain) implements GrainBuilding {}

    /**
     * It cannot exist.
     *
     * @param reasons all of them, as sentences with the values
     */
    record Impossible(List<String> reasons) implements GrainBuilding {
        public Impossible {
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("an impossible grain has at least one reason");
            }
        }
    }

    /**
     * Answers for both cases.
     *
     * @param built      the answer where it can exist
     * @param impossible the answer where it cannot
     * @param <T>        of the answer
     * @return the answer
     */
    default <T> T match(Function<Built, T> built, Function<Impossible, T> impossible) {
        return this instanceof Built b ? built.apply(b) : impossible.apply((Impossible) this);
    }
}
