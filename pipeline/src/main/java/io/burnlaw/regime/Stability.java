package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Regimes.Regime;

/**
 * Whether a motor has a steady pressure: with an exponent of 1 or more a small rise of pressure makes more gas than it
 * drives out (Sutton and Biblarz, chapter 11: 0 &lt; n &lt; 1 for stable operation).
 *
 * @param regime   the regime that decides it: the one whose exponent's upper limit is highest
 * @param exponent of that regime [1]
 * @param verdict  by the interval of the exponent
 * @param sentence the verdict in words
 */
public record Stability(Regime regime, double exponent, Verdict verdict, String sentence) {

    /** The conclusion that the interval of the largest exponent allows. */
    public enum Verdict {
        /** The whole interval lies below 1. */
        STABLE,
        /** The interval reaches 1, or there is none. */
        NOT_CERTAIN,
        /** The whole interval lies at or above 1. */
        UNSTABLE
    }

    /** {@return the verdict over all regimes: that of the regime with the highest upper limit of its exponent} */
    public static Stability of(Regimes regimes) {
        Regime worst = regimes.regimes().get(0);
        for (Regime regime : regimes.regimes()) {
            worst = upper(regime) > upper(worst) ? regime : worst;
        }
        double low = worst.exponentInterval()
                .estimated()
                .map(Interval.Estimated::low)
                .orElse(Double.NEGATIVE_INFINITY);
        Verdict verdict = upper(worst) < 1 ? Verdict.STABLE : low >= 1 ? Verdict.UNSTABLE : Verdict.NOT_CERTAIN;
        String exponent = Words.number(worst.law().exponent(), worst.exponentInterval());
        String where = " from " + Words.pressure(worst.low()) + " to " + Words.pressure(worst.high());
        String sentence = switch (verdict) {
            case STABLE ->
                "A motor has a steady pressure: the largest exponent is " + exponent + where
                        + ", and its whole interval is below 1.";
            case NOT_CERTAIN ->
                "Whether a motor has a steady pressure" + where + " is uncertain: the exponent there is " + exponent
                        + ", and 1 is not ruled out. Do not fire a motor there.";
            case UNSTABLE ->
                "A motor has no steady pressure" + where + ": the exponent there is " + exponent
                        + ", 1 or more. Do not fire a motor there.";
        };
        return new Stability(worst, worst.law().exponent(), verdict, sentence);
    }

    private static double upper(Regime regime) {
        return regime.exponentInterval()
                .estimated()
                .map(Interval.Estimated::high)
                .orElse(Double.POSITIVE_INFINITY);
    }
}
