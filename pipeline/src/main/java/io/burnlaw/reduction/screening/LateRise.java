package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.Smoothing;
import java.util.List;

/**
 * What is between the first sign of burning and the main rise: hardly anything, silence (a hang-fire), a sustained
 * low pressure (a smoulder), or pulses (chuffing that ended in a burn).
 */
final class LateRise {

    /** A wait is reported from here on [s] ... common practice, no source. */
    private static final double LONG = 0.2;

    /** ... and if it is also longer than this share of the main burn [1]. */
    private static final double LONG_SHARE = 0.04;

    /** What is looked for lasts at least this long [s], so that much may be averaged. */
    private static final double WINDOW = LONG / 4;

    /** A sign of burning is above the averaged noise by this many standard deviations. */
    private static final double CLEAR = 6;

    /** Less than this share of the peak is a zero that wanders [1]; a smoulder in unchoked flow is hardly more. */
    private static final double LEAST_SHARE = 0.002;

    /** A pulse before the rise is at least this high, as a share of the peak [1]. */
    private static final double PULSE_SHARE = 0.024;

    private LateRise() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        int half = Math.max(shape.half(), (int) (WINDOW / 2 / Math.max(shape.interval(), 1e-6)));
        double[] averaged = Smoothing.mean(shape.gauge(), half);
        double noise = burn.record().noiseStd() / Math.sqrt(2 * half + 1.0);
        double threshold = Math.max(Math.max(CLEAR * noise, 4 * burn.record().zeroStd()), LEAST_SHARE * shape.peak());
        int first = firstSign(shape, averaged, half, threshold);
        double wait = shape.time()[shape.mainRise()] - shape.time()[first];
        if (wait < LONG || wait < LONG_SHARE * shape.mainDuration()) {
            return List.of();
        }
        int end = beforeTheRise(shape, first);
        Pulses pulses = Pulses.between(shape, first, end, Math.max(3 * threshold, PULSE_SHARE * shape.peak()));
        if (pulses.count() >= Pulses.CHUFFING) {
            return List.of(Chuffing.told(pulses, shape).withSeverity(Severity.CAUTION));
        }
        // The igniter's pulse belongs to neither: what counts is what holds on after the first third.
        double held = BurnShape.median(averaged, first + (end - first) / 3, Math.max(end, first + 1));
        boolean burning = held > threshold;
        String message = Sentence.of(
                "%.3g s pass between the first sign of burning at %.4g s and the main rise at %.4g s; in"
                        + " between, the pressure %s.",
                wait,
                shape.time()[first],
                shape.time()[shape.mainRise()],
                burning
                        ? Sentence.of(
                                "holds at %.3g kPa gauge, %.2g %% of its peak", held / 1e3, 100 * held / shape.peak())
                        : Sentence.of("stays below %.3g kPa gauge", threshold / 1e3));
        return List.of(
                Finding.at(burning ? FindingCode.SMOULDER : FindingCode.HANG_FIRE, message, shape.time()[first]));
    }

    /** Where the average is above the threshold for at least its own width, the main rise itself left out. */
    private static int firstSign(BurnShape shape, double[] averaged, int half, double threshold) {
        int run = 2 * half + 1;
        int above = 0;
        for (int i = 0; i < shape.mainRise(); i++) {
            above = averaged[i] > threshold ? above + 1 : 0;
            if (above >= run) {
                return i - run + 1;
            }
        }
        return shape.mainRise();
    }

    /** Back down the main rise to where it began. */
    private static int beforeTheRise(BurnShape shape, int first) {
        int i = shape.mainRise();
        while (i > first + 1 && shape.smooth()[i - 1] < shape.smooth()[i]) {
            i--;
        }
        return i;
    }
}
