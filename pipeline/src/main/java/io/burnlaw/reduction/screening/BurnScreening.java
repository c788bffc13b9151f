package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.ArrayList;
import java.util.List;

/**
 * Checks a burn before its events are known: whether it burned at all, completely, and as one burn. If a finding is a
 * rejection, the firing gives no rate.
 */
public final class BurnScreening {

    private static final List<BurnDetector> BURN =
            List.of(LateRise::look, SlowBurn::look, Collapse::look, Blockage::look, CaseLimit::look);

    private BurnScreening() {}

    /**
     * Screens one burn.
     *
     * @param burn what is known of the firing
     * @return what was seen, in the order of the detectors; a missing ignition is given alone, and pulses are not looked at
     *         as if they were one burn
     */
    public static List<Finding> screen(Burn burn) {
        BurnShape shape = BurnShape.of(burn);
        List<Finding> cold = Ignition.look(burn, shape);
        if (!cold.isEmpty()) {
            return cold;
        }
        boolean cut =
                burn.record().findings().stream().anyMatch(finding -> finding.code() == FindingCode.BACKWARD_TIME);
        List<Finding> seen = new ArrayList<>(cut ? List.of() : Truncation.look(burn, shape));
        List<Finding> pulses = Chuffing.look(burn, shape);
        if (!pulses.isEmpty()) {
            seen.addAll(pulses);
            seen.addAll(CaseLimit.look(burn, shape));
            return seen;
        }
        List<Finding> impossible = BurnTime.look(burn, shape);
        if (!impossible.isEmpty()) {
            // On a wrong time axis every fall looks like a burst.
            seen.addAll(impossible);
            return seen;
        }
        BURN.forEach(detector -> seen.addAll(detector.look(burn, shape)));
        return seen;
    }

    /** One thing to look for in a burn, before its events are known. */
    @FunctionalInterface
    private interface BurnDetector {

        /**
         * Looks.
         *
         * @param burn what is known of the firing
         * @return what was seen, none where nothing was
         */
        List<Finding> look(Burn burn, BurnShape shape);
    }

    /** Whether the case was loaded above its stated limit. */
    private static final class CaseLimit {

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

    /** Whether the motor stayed at low pressure for its whole burn. */
    static final class SlowBurn {

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
                            "From %.4g s on the motor burned at %.3g kPa absolute, %.2g times ambient, for %.3g s; its"
                                    + " pressure never rose.",
                            shape.time()[shape.mainRise()], absolute / 1e3, absolute / ambient, shape.mainDuration()),
                    shape.time()[shape.mainRise()]));
        }
    }

    /** Whether the record begins after the motor, or ends before it. */
    static final class Truncation {

        /** Below this share of the peak the web has burned out, whatever the grain [1]. */
        private static final double BURNT_OUT = 0.3;

        /** A record that begins above this share of the main burn's level has no ignition in it [1]. */
        private static final double ALIGHT = 0.6;

        private Truncation() {}

        static List<Finding> look(Burn burn, BurnShape shape) {
            if (shape.smooth()[0] > ALIGHT * shape.level()) {
                return List.of(Finding.at(
                                FindingCode.NO_QUIET_PART,
                                Sentence.of(
                                        "The record begins at %.4g s with %.3g MPa gauge in the chamber, %.0f %% of the main burn's"
                                                + " level: the ignition is missing, and how much web had burned is unknown.",
                                        shape.time()[0],
                                        shape.smooth()[0] / 1e6,
                                        100 * shape.smooth()[0] / shape.level()),
                                shape.time()[0])
                        .withSeverity(Severity.REJECTION));
            }
            int last = shape.size() - 1;
            double left = shape.smooth()[last];
            if (left < BURNT_OUT * shape.peak()) {
                return List.of();
            }
            return List.of(Finding.at(
                    FindingCode.TRUNCATED,
                    Sentence.of(
                            "The record ends at %.4g s with %.3g MPa gauge still in the chamber, %.0f %% of its peak: the"
                                    + " burnout of the web is missing.",
                            shape.time()[last], left / 1e6, 100 * left / shape.peak()),
                    shape.time()[last]));
        }
    }
}
