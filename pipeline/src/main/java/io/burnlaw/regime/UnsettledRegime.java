package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.List;

/**
 * One or two points at an end of the range that plainly do not follow the law of the others, and are too few to carry
 * a law of their own: a regime in all likelihood, and a firing that would settle it.
 *
 * @param side           at which end they lie
 * @param ids            of these points
 * @param pressureLow    lowest among them [Pa, absolute]
 * @param pressureHigh   highest among them [Pa, absolute]
 * @param rate           geometric mean of their rates [m/s]
 * @param rateRatio      the others' law over these points' rate below, its inverse above [1]: how many times faster the
 *                       upper side burns at the pressures of these points
 * @param ratioInterval  of that ratio, from the prediction of the others' law
 * @param gapLow         highest pressure known on the slow side [Pa, absolute]
 * @param gapHigh        lowest pressure known on the fast side [Pa, absolute]
 * @param settlingPressure where the next firing would say most [Pa, absolute]
 * @param sentence       what can be said, and what would settle it
 */
public record UnsettledRegime(
        Side side,
        List<String> ids,
        double pressureLow,
        double pressureHigh,
        double rate,
        double rateRatio,
        Interval ratioInterval,
        double gapLow,
        double gapHigh,
        double settlingPressure,
        String sentence) {

    /** At which end of the pressures. */
    public enum Side {
        /** Slow points below the others. */
        BELOW,
        /** Fast points above the others. */
        ABOVE
    }

    public UnsettledRegime {
        ids = List.copyOf(ids);
    }

    /** {@return whether it may as well be bad firings: one or two points, off by no more than those usually are} */
    public boolean mayBeBadFirings() {
        return ids.size() < 3 && Math.log(rateRatio) < BadPoints.USUAL;
    }
}
