package io.burnlaw.report.document;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Piecewise power laws.
 *
 * @param claim what may be said: {@code single-law}, {@code smooth-curve} (the exponent changes without a break), {@code
 *     bend} (it changes; whether at a break or smoothly cannot be told) or {@code break}
 * @param selected how many
 * @param shape {@code joined} or {@code jumping}; absent for one
 * @param laws from low to high pressure; where there is one, it is the single law
 * @param breaks between them
 * @param evidence why that many
 */
public record Regimes(
        @Nullable String claim,
        int selected,
        @Nullable String shape,
        List<Law> laws,
        List<Break> breaks,
        RegimeEvidence evidence) {

    public Regimes {
        laws = List.copyOf(laws);
        breaks = List.copyOf(breaks);
    }

    /**
     * The same where one regime was found: its law is the single law, so that a reader never finds two answers to one
     * question; its curve is there only.
     *
     * @param single the single law
     * @return with it in place of the one law; unchanged where there are several
     */
    public Regimes agreeingWith(Law single) {
        return laws.size() != 1
                ? this
                : new Regimes(
                        claim,
                        selected,
                        shape,
                        List.of(single.withoutCurve().called(laws.get(0).regime())),
                        breaks,
                        evidence);
    }

    /**
     * A smooth explanation that competes with breaks.
     *
     * @param name such as {@code quadratic}
     * @param bic Bayesian information criterion, smaller is better
     * @param beaten whether the breaks explain more
     * @param sentence what it means
     */
    public record Rival(String name, double bic, boolean beaten, String sentence) {}

    /**
     * A pressure at which the law changes.
     *
     * @param pressure absolute
     * @param kind {@code slope} or {@code jump}
     * @param rateRatio rate just above over rate just below [1]
     * @param exponentBelow [1]
     * @param exponentAbove [1]
     */
    public record Break(Quantity pressure, String kind, double rateRatio, double exponentBelow, double exponentAbove) {}

    /**
     * The evidence for the number of regimes.
     *
     * @param pValue of the selected count against one less, by seeded bootstrap
     * @param statistic sup-F
     * @param bicByCount for 1, 2, … regimes
     * @param sequentialAnswer regimes by sequential tests
     * @param criterionAnswer regimes by the information criterion
     * @param replicates of the bootstrap
     * @param rivals smooth curves that were tried
     * @param sentence the evidence in words
     */
    public record RegimeEvidence(
            @Nullable Double pValue,
            @Nullable Double statistic,
            List<Double> bicByCount,
            int sequentialAnswer,
            int criterionAnswer,
            int replicates,
            List<Rival> rivals,
            String sentence) {

        public RegimeEvidence {
            bicByCount = List.copyOf(bicByCount);
            rivals = List.copyOf(rivals);
        }
    }
}
