package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes.Break;
import java.util.List;

/**
 * Which laws are slow ones: those below a break at which the rate jumps up, or below the top of a steep passage with an
 * exponent of 1 or more, in which no motor stands still.
 */
final class SlowSide {

    /** A jump of less than this is no threshold for the owner of a motor. */
    private static final double LEAST_RATIO = 1.25;

    private SlowSide() {}

    /** {@return how many laws, from the lowest, lie below the threshold; zero where there is none} */
    static int lawsBelow(List<RateLaw> laws, List<Break> breaks, double level) {
        int best = 0;
        double largest = LEAST_RATIO;
        for (int j = 0; j < breaks.size(); j++) {
            double ratio = ratio(laws, breaks, j, level);
            if (ratio > largest) {
                largest = ratio;
                best = j + 1;
            }
        }
        return best;
    }

    /** {@return fast over slow rate across a break, or 1 where that break is no threshold} */
    static double ratio(List<RateLaw> laws, List<Break> breaks, int j, double level) {
        Break at = breaks.get(j);
        if (at.kind() == Break.Kind.JUMP) {
            double low = at.rateRatioInterval()
                    .estimated()
                    .map(Interval.Estimated::low)
                    .orElse(0.0);
            return low > 1 ? at.rateRatio() : 1;
        }
        RateLaw passage = laws.get(j);
        boolean steep = passage.exponentInterval(level)
                        .estimated()
                        .map(Interval.Estimated::low)
                        .orElse(0.0)
                >= 1;
        if (!steep || laws.get(j + 1).exponent() >= 1) {
            return 1;
        }
        double bottom = j == 0 ? passage.pressureLow() : breaks.get(j - 1).pressure();
        return passage.rate(at.pressure()) / passage.rate(bottom);
    }
}
