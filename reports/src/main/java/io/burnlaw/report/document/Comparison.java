package io.burnlaw.report.document;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A candidate against its baseline.
 *
 * @param baseline id
 * @param candidate id
 * @param additive its name
 * @param fraction by mass [1]
 * @param ratio over the pressures that both share
 * @param exponentDifference candidate less baseline
 * @param tests whether they differ
 * @param smallestDetectable relative change of rate that these data could have shown [1]
 * @param differs whether a difference was shown
 * @param verdict a sentence with numbers
 * @param notCompared why there are no numbers
 */
public record Comparison(
        String baseline,
        String candidate,
        @Nullable String additive,
        @Nullable Double fraction,
        List<RatioPoint> ratio,
        @Nullable Quantity exponentDifference,
        @Nullable ComparisonTests tests,
        @Nullable Double smallestDetectable,
        boolean differs,
        String verdict,
        @Nullable String notCompared) {

    public Comparison {
        ratio = List.copyOf(ratio);
    }

    /**
     * An F test.
     *
     * @param statistic F
     * @param numeratorDegrees of freedom
     * @param denominatorDegrees of freedom
     * @param pValue [1]
     */
    public record FTest(double statistic, int numeratorDegrees, int denominatorDegrees, double pValue) {}

    /**
     * Rate of the candidate over rate of the baseline.
     *
     * @param pressure MPa, absolute
     * @param value [1]
     * @param low of the simultaneous band [1]
     * @param high of the simultaneous band [1]
     */
    public record RatioPoint(double pressure, double value, double low, double high) {}

    /**
     * Whether two laws differ.
     *
     * @param parallel same exponent
     * @param coincident same law
     * @param adjustedPValue of coincidence, after Holm over all candidates
     */
    public record ComparisonTests(FTest parallel, FTest coincident, double adjustedPValue) {}
}
