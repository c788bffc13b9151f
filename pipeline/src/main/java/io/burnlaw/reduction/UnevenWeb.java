package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.balance.TailOff;
import java.util.List;

/** Whether the tail-off is longer than the chamber needs to empty. */
final class UnevenWeb {

    /** With fewer samples in the whole operation a tail-off is a few of them. */
    private static final int FEWEST = 60;

    private UnevenWeb() {}

    static List<Finding> look(BurnReduction reduction) {
        double web = reduction.inputs().grain().web();
        double spread = reduction.estimate().tail().spread();
        double samples = reduction.inputs().record().samplesPerCell()
                * reduction.inputs().record().size();
        if (spread < TailOff.NOTICEABLE * web || samples < FEWEST) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.UNEVEN_WEB,
                Sentence.of(
                        "The tail-off is as long as a core %.2f mm off centre makes it in a web of %.3g mm; the rate is"
                                + " referred to the mean web.",
                        1000 * Math.sqrt(2) * spread, 1000 * web),
                reduction.events().webBurnout()));
    }
}
