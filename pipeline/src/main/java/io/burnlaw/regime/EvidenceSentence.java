package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.regime.Evidence.CountTest;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.Selector.Selection;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;

/** Says why so many laws stand. */
final class EvidenceSentence {

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
                                        : "No jump of the rate at the break is needed (")
                        .append(p.words())
                        .append("). "));
        if (selection.claim() != Claim.SMOOTH_CURVE && selection.fit().count() < found) {
            text.append(capital(Words.laws(found)))
                    .append(" would nowhere change the rate by as much as ")
                    .append(NumberFormat.percent(Selector.SMALLEST_CHANGE, 1))
                    .append(", the smallest change that counts. ");
        }
        text.append(
                switch (selection.claim()) {
                    case SINGLE_LAW -> "No change of regime is claimed.";
                    case BREAK ->
                        "Every smooth curve that was tried explains the points less well: a break is claimed.";
                    case BEND, SMOOTH_CURVE -> curved(selection);
                });
        if (sample.systematic() > 0) {
            text.append(" The simulated campaigns carried a smooth systematic error of ")
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
                : "The exponent changes, but whether at a break or smoothly these points cannot tell: no break is claimed. "
                        + smooth.sentence();
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
