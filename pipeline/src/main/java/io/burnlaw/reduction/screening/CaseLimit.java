package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Whether the case was loaded above its stated limit. */
final class CaseLimit {

    private CaseLimit() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        if (burn.hardware().casePressureLimit().isEmpty()) {
            return List.of();
        }
        double limit = burn.hardware().casePressureLimit().getAsDouble();
        if (!(shape.peak() > limit)) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.ABOVE_CASE_LIMIT,
                Sentence.of(
                        "At %.4g s the pressure reached %.3g MPa gauge, %.2g times the stated limit of the case of %.3g MPa.",
                        shape.time()[shape.peakAt()], shape.peak() / 1e6, shape.peak() / limit, limit / 1e6),
                shape.time()[shape.peakAt()]));
    }
}
