package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Whether anything rises clearly above the noise. */
final class Ignition {

    /** A rise above this many standard deviations of the smoothed record is none of the noise's. */
    private static final double STDS = 10;

    /** Below this share of the ambient pressure no nozzle flow can be distinguished from a wandering zero [1]. */
    private static final double LEAST_OVER_AMBIENT = 0.02;

    private Ignition() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        double needed = Math.max(
                STDS * shape.smoothStd(),
                Math.max(
                        5 * burn.record().zeroStd(),
                        LEAST_OVER_AMBIENT * burn.firing().ambientPressure()));
        if (shape.size() >= 8 && shape.peak() > needed) {
            return List.of();
        }
        String message = shape.size() < 8
                ? "The record has only " + shape.size() + " samples: too few to find a burn."
                : Sentence.of(
                        "Between %.4g s and %.4g s the pressure never rises above %.3g kPa gauge; a burn would show"
                                + " above %.3g kPa.",
                        shape.time()[0], shape.time()[shape.size() - 1], Math.max(0, shape.peak()) / 1e3, needed / 1e3);
        return List.of(
                shape.size() == 0
                        ? Finding.of(FindingCode.NO_IGNITION, message)
                        : Finding.at(FindingCode.NO_IGNITION, message, shape.time()[shape.peakAt()]));
    }
}
