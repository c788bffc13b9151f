package io.burnlaw.planning;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;

/** Which throat to drill next, or why no throat is named. */
public sealed interface Plan {

    /** What must be read beside every number that could be drilled. */
    List<String> CAUTIONS = List.of(
            "These are predictions from a fitted law. They replace neither a proof test of the case, nor distance and shelter, nor the local law and a licensed person.",
            "A drilled hole is usually 0.02 to 0.1 mm larger than its drill (common practice, no source): measure the hole, and plan again with the measured diameter.",
            "A grain that is warmer than the fired ones burns faster, at a higher pressure.",
            "Cracks, voids, a loose inhibitor or a blocked nozzle raise the pressure above all of these intervals.");

    /** {@return the grain that it was worked out for, in words} */
    String grain();

    /** {@return to be read before anything is drilled} */
    List<String> cautions();

    /** {@return the advice, or why there is none} */
    String sentence();

    /**
     * There is a plan.
     *
     * @param grain             that it was worked out for, in words
     * @param allowedPressure   what a peak's upper prediction must stay below [Pa, absolute]
     * @param allowedBecause    what sets it, a clause
     * @param smallestThroat    that stays below it [m]
     * @param next              the firing that tells most
     * @param ladder            throats that span the range, from low to high pressure
     * @param slowRegimeThroat  above which the motor may fall into the slow regime [m]
     * @param table             of all throats that may be named, and of those that are too large
     * @param firingsToExponent further firings until the exponent is known as well as wanted; empty where even many
     *                          would not reach it
     * @param cautions          to be read before anything is drilled
     */
    record Planned(
            String formulation,
            String grain,
            double allowedPressure,
            String allowedBecause,
            double smallestThroat,
            Optional<PlannedThroat> next,
            List<PlannedThroat> ladder,
            OptionalDouble slowRegimeThroat,
            Optional<ThroatTable> table,
            OptionalInt firingsToExponent,
            String sentence,
            List<String> cautions)
            implements Plan {
        public Planned {
            ladder = List.copyOf(ladder);
            cautions = List.copyOf(cautions);
        }
    }

    /**
     * No throat is named.
     *
     * @param grain           that was asked for, in words
     * @param allowedPressure [Pa, absolute], where it is known
     * @param cautions        that hold all the same
     */
    record Refused(
            String formulation, String grain, OptionalDouble allowedPressure, String sentence, List<String> cautions)
            implements Plan {
        public Refused {
            cautions = List.copyOf(cautions);
        }
    }

    /**
     * Answers for both cases.
     *
     * @param planned the answer where there is a plan
     * @param refused the answer where there is none
     */
    default <T> T match(Function<Planned, T> planned, Function<Refused, T> refused) {
        return this instanceof Planned p ? planned.apply(p) : refused.apply((Refused) this);
    }
}
