package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.balance.RateEstimate;
import io.burnlaw.reduction.balance.TailOff;
import io.burnlaw.reduction.events.UniformTrace;
import java.util.List;

/**
 * Whether the tail-off is longer than the chamber needs to empty, or whether something burned on behind it: where a part of the
 * surface burns through early, the rest may fall into a slow regime, and how fast it burns there is unknown.
 */
final class UnevenWeb {

    /** With fewer samples in the whole operation a tail-off is a few of them. */
    private static final int FEWEST = 60;

    /** What burns on lasts so long [s] ... common practice, no source. */
    private static final double LONG = 0.2;

    /** ... and so much of the burn [1] ... */
    private static final double LONG_SHARE = 0.04;

    /** ... and gives less than this share of the highest pressure in its second half, which no tail-off does for long [1]. */
    private static final double FAINT = 0.02;

    private UnevenWeb() {}

    /**
     * How long something burned on behind the burnout of the mean web, as the fast law has it.
     *
     * @param record  the operation [Pa, absolute]
     * @param ambient [Pa, absolute]
     * @param highest pressure over ambient [Pa]
     * @return [s]; 0 where the chamber only emptied
     */
    static double burnedOn(UniformTrace record, double ambient, RateEstimate estimate, double highest) {
        double end = record.time(record.size() - 1);
        double after = end - estimate.burnout();
        boolean faint = record.mean(end - after / 2, end) - ambient < FAINT * highest;
        return after > LONG && after > LONG_SHARE * (estimate.burnout() - estimate.ignition()) && faint ? after : 0;
    }

    static List<Finding> look(BurnReduction reduction) {
        double web = reduction.inputs().grain().web();
        double spread = reduction.estimate().tail().spread();
        double samples = reduction.inputs().record().samplesPerCell()
                * reduction.inputs().record().size();
        if (reduction.burnedOn() > 0) {
            return List.of(Finding.at(
                    FindingCode.UNEVEN_WEB,
                    Sentence.of(
                            "Part of the propellant burned on for %.3g s after the main burn, at less than %.2g kPa gauge:"
                                    + " the mean web may have burned out later by as much.",
                            reduction.burnedOn(),
                            1e-3 * FAINT * reduction.found().highest()),
                    reduction.events().webBurnout()));
        }
        if (spread < TailOff.NOTICEABLE * web || samples < FEWEST) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.UNEVEN_WEB,
                Sentence.of(
                        "The tail-off is as long as a core %.2f mm off centre would make it with a web of %.3g mm; the"
                                + " rate is that of the mean web.",
                        1000 * Math.sqrt(2) * spread, 1000 * web),
                reduction.events().webBurnout()));
    }
}
