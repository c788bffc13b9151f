package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Looks a burn over once its events and its rate are known. */
final class BurnFindings {

    private BurnFindings() {}

    /**
     * What was out of the ordinary.
     *
     * @param burn all that is known
     * @return findings; one of severity rejection costs the firing its rate
     */
    static List<Finding> of(BurnRecord burn) {
        List<Finding> found = new ArrayList<>();
        burn.hardware().casePressureLimit().ifPresent(limit -> {
            if (burn.highest() > limit) {
                found.add(Finding.of(
                        FindingCode.ABOVE_CASE_LIMIT,
                        String.format(
                                Locale.ROOT,
                                "the highest pressure was %.3g MPa gauge, above the case's limit of %.3g MPa gauge",
                                burn.highest() / 1e6,
                                limit / 1e6)));
            }
        });
        return found;
    }
}
