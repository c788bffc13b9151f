package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import java.util.List;

/** Whether the tail-off is longer than the chamber needs to empty. */
final class UnevenWeb {

    private UnevenWeb() {}

    static List<Finding> look(BurnReduction reduction) {
        double web = reduction.inputs().grain().web();
        double spread = reduction.estimate().tail().spread();
        if (spread < TailOff.NOTICEABLE * web) {
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
