package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.Selector.Selection;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The evidence for the number of laws.
 *
 * @param tests            of each count against the next, as far as the sequence went
 * @param bicByCount       Bayesian information criterion for 1, 2, … laws, the better shape of each
 * @param sequentialAnswer laws by the sequence of tests
 * @param criterionAnswer  laws by the criterion
 * @param systematic       smooth relative error that the simulated campaigns carried [1]
 * @param clusters         independent firings among the points
 * @param sentence         the evidence in words
 */
public record Evidence(
        List<CountTest> tests,
        List<Double> bicByCount,
        int sequentialAnswer,
        int criterionAnswer,
        double systematic,
        int clusters,
        List<Rival> rivals,
        String sentence) {

    public Evidence {
        tests = List.copyOf(tests);
        bicByCount = List.copyOf(bicByCount);
        rivals = List.copyOf(rivals);
    }

    /**
     * Another explanation of the same points, without any break.
     *
     * @param rss       sum of squares of its residuals in ln r, weighted [1]
     * @param bic       Bayesian information criterion, smaller is better
     * @param parameter what the kind's curve is governed by
     * @param pValue    how often points simulated from the rival would favour the breaks as much as these do [1]; empty
     *                  where no break is in question
     * @param beaten    whether the breaks explain more than chance would if the rival were true
     */
    public record Rival(
            Kind kind,
            double rss,
            double bic,
            double parameter,
            OptionalDouble pValue,
            boolean beaten,
            String sentence) {

        /** The kind of explanation. */
        public enum Kind {
            /** ln r is a quadratic in ln P; its parameter is dn/d(ln P) [1]. */
            QUADRATIC,
            /** 1/r = A/P + B/P^(1/3) (Summerfield and others 1960); its parameter is (A/B)^(3/2), a pressure [Pa]. */
            TWO_TERM,
            /** One law seen by a sensor that reads too high by a constant, its parameter [Pa]. */
            ZERO_OFFSET
        }

        /** {@return whether the propellant itself would burn along this curve} */
        public boolean smooth() {
            return kind != Kind.ZERO_OFFSET;
        }
    }

    /**
     * A test of one count of laws against the next.
     *
     * @param fewer    count under the hypothesis
     * @param joinedF  largest F over the positions of a further break, laws joined [1]
     * @param jumpingF the same, laws jumping [1]; zero where there are too few points for it
     * @param pValue   share of simulated campaigns that look at least as extreme [1]: for one law
     *                 against two joined ones by the likelihood averaged over the places of the break, else by the
     *                 largest F
     */
    public record CountTest(int fewer, double joinedF, double jumpingF, double pValue, int replicates) {}

    /** Says why there are so many laws. */
    static final class EvidenceSentence {

        private EvidenceSentence() {}

        static String of(Sample sample, RegimeOptions options, Selection selection, int criterion) {
            StringBuilder text = new StringBuilder();
            int found = selection.sequential();
            if (selection.tests().isEmpty()) {
                text.append(sample.size())
                        .append(" points are too few to look for a change of law: each law needs ")
                        .append(options.minimumPoints())
                        .append('.');
                return text.toString();
            }
            for (CountTest test : selection.tests()) {
                boolean rejected = test.fewer() < found;
                text.append(capital(Words.laws(test.fewer())))
                        .append(test.fewer() == 1 ? " is " : " are ")
                        .append(rejected ? "not enough (" : "enough (")
                        .append(new SimulatedP(test.pValue(), test.replicates()).words())
                        .append(" against ")
                        .append(Words.count(test.fewer() + 1))
                        .append(", ")
                        .append(test.replicates())
                        .append(" simulated campaigns). ");
            }
            if (criterion != found) {
                text.append("The information criterion alone would choose ")
                        .append(Words.laws(criterion))
                        .append(". ");
            }
            selection
                    .jumpPValue()
                    .ifPresent(p -> text.append(
                                    selection.fit().shape() == Shape.JUMPING
                                                    && selection.fit().count() > 1
                                            ? "The rate jumps at the break ("
                                            : "The break needs no jump of the rate (")
                            .append(p.words())
                            .append("). "));
            if (selection.claim() != Claim.SMOOTH_CURVE && selection.fit().count() < found) {
                text.append(capital(Words.laws(found)))
                        .append(" would change the rate by less than ")
                        .append(NumberFormat.percent(Selector.SMALLEST_CHANGE, 1))
                        .append(" everywhere, so they do not count. ");
            }
            text.append(
                    switch (selection.claim()) {
                        case SINGLE_LAW -> "No change of regime is claimed.";
                        case BREAK -> "All smooth curves explain the points less well: a break is claimed.";
                        case BEND, SMOOTH_CURVE -> curved(selection);
                    });
            if (sample.systematic() > 0) {
                text.append(" The simulated campaigns had a smooth systematic error of ")
                        .append(NumberFormat.percent(sample.systematic(), 2))
                        .append('.');
            }
            return text.toString();
        }

        /** What is said where a smooth curve does as well, or better. */
        static String curved(Selection selection) {
            Rival smooth = selection.rivals().stream()
                    .map(Rivals.Fitted::rival)
                    .filter(rival -> rival.smooth() && !rival.beaten())
                    .min((a, b) -> Double.compare(a.bic(), b.bic()))
                    .orElseThrow();
            return selection.claim() == Claim.SMOOTH_CURVE
                    ? "The exponent changes smoothly with pressure, and no break is claimed. " + smooth.sentence()
                    : "The exponent changes, but these points do not show whether at a break or smoothly: no break is claimed. "
                            + smooth.sentence();
        }

        private static String capital(String text) {
            return Character.toUpperCase(text.charAt(0)) + text.substring(1);
        }
    }
}
