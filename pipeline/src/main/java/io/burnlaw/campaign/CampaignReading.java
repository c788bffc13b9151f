package io.burnlaw.campaign;

import java.util.List;
import java.util.function.Function;

/** What reading a campaign folder gave: the campaign, or all that stands against it. */
public sealed interface CampaignReading {

    /**
     * It can be worked with; single rows may still be unusable.
     *
     * @param campaign what was read
     */
    record Read(Campaign campaign) implements CampaignReading {}

    /**
     * It cannot be worked with.
     *
     * @param problems all of them, in the order of the files
     */
    record Unusable(List<Problem> problems) implements CampaignReading {
        public Unusable {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("an unusable campaign names at least one problem");
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
