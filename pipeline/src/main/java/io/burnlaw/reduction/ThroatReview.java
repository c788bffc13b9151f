package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.ArrayList;
import java.util.List;

/** Whether the throat kept its size: by the log, measured before and after, and by the course of the rates. */
final class ThroatReview {

    /** Significance of two readings' difference, in standard uncertainties. */
    private static final double STDS = 3;

    private ThroatReview() {}

    static List<Finding> look(BurnReduction reduction) {
        Firing row = reduction.burn().firing();
        List<Finding> findings = new ArrayList<>();
        row.throatDiameterAfter().ifPresent(after -> measured(row.throatDiameter(), after, findings));
        reduction
                .throatChange()
                .ifPresent(change -> findings.add(Finding.at(
                                FindingCode.THROAT_EROSION,
                                row.throatDiameterAfter().isPresent()
                                        ? otherThanMeasured(change)
                                        : unmeasured(
                                                change, row.throatDiameter().value()),
                                reduction.events().ignition())
                        .withSeverity(Severity.CAUTION)));
        return findings;
    }

    private static void measured(Measured before, Measured after, List<Finding> findings) {
        double change = after.value() - before.value();
        double std = Math.hypot(before.stdOr(UsualUncertainty.THROAT), after.stdOr(UsualUncertainty.THROAT));
        if (!(Math.abs(change) > STDS * std)) {
            return;
        }
        double ratio = after.value() / before.value();
        findings.add(Finding.of(
                FindingCode.THROAT_EROSION,
                Sentence.of(
                        "The throat measured %.4g mm before and %.4g mm after the firing: its area %s by %.2g %%; the"
                                + " reduction takes it to change evenly over the burn.",
                        1e3 * before.value(), 1e3 * after.value(), word(change), 100 * Math.abs(ratio * ratio - 1))));
    }

    private static String unmeasured(ThroatChange change, double before) {
        return Sentence.of(
                "Over the burn the rate drifts from its own law as if the throat area %s by %.2g %% (± %.2g %%), to a"
                        + " diameter of %.4g mm; it was not measured after the firing, so the rates are those of a throat"
                        + " that stayed, and their uncertainty holds the change.",
                word(change.area()),
                100 * Math.abs(change.area()),
                100 * change.std(),
                1e3 * before * Math.sqrt(1 + change.area()));
    }

    private static String otherThanMeasured(ThroatChange change) {
        return Sentence.of(
                "Over the burn the rate drifts from its own law as if the throat area %s by another %.2g %% (± %.2g %%)"
                        + " beyond what was measured: check both diameters, and the core and the length of the grain.",
                word(change.area()), 100 * Math.abs(change.area()), 100 * change.std());
    }

    private static String word(double change) {
        return change > 0 ? "grew" : "shrank";
    }
}
