package io.burnlaw.planning;

import java.util.function.Function;

/** The throat for a wanted pressure, or why none is named. */
public sealed interface ThroatAnswer {

    /**
     * There is one.
     *
     * @param throat the drill nearest to it, with its predictions
     * @param exact  diameter that would give the pressure exactly [m]
     */
    record Found(PlannedThroat throat, double exact) implements ThroatAnswer {}

    /**
     * None is named.
     *
     * @param reason a sentence
     */
    record None(String reason) implements ThroatAnswer {}

    /**
     * Answers for both cases.
     *
     * @param found the answer where there is a throat
     * @param none  the answer where there is none
     * @param <T>   of the answer
     * @return the answer
     */
    default <T> T match(Function<Found, T> found, Function<None, T> none) {
        return this instanceof Found f ? found.apply(f) : none.apply((None) this);
    }
}
