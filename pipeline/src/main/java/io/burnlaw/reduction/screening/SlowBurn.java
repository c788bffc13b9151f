package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Whether the motor stayed at low pressure for its whole burn. */
final class SlowBurn {

    /** Absolute pressure over ambient below which the main burn counts as slow [1]: common practice, no source. */
    private static final double LOW = 3.5;

    private SlowBurn() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        double ambient = burn.firing().ambientPressure();
        double absolute = shape.level() + ambient;
        if (absolute > LOW * ambient) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.SLOW_BURNING,
                Sentence.of(
                        "From %.4g s on the motor burned at %.3g kPa absolute, %.2g times ambient, for %.3g s; it never"
                                + " came up.",
                        shape.time()[shape.mainRise()], absolute / 1e3, absolute / ambient, shape.mainDuration()),
                shape.time()[shape.mainRise()]));
    }
}
