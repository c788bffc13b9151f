package io.burnlaw.comparison;

import io.burnlaw.ratelaw.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.apache.commons.statistics.distribution.FDistribution;

/** Result of comparing a candidate with its baseline: numbers and a verdict, or the reason why there is none. */
public sealed interface Comparison {

    /** {@return id of the candidate} */
    String candidate();

    /**
     * Rate of the candidate over rate of the baseline.
     *
     * @param pressure [Pa, absolute]
     * @param value    [1]
     * @param low      lower end of the simultaneous band [1]
     * @param high     upper end of the simultaneous band [1]
     */
    record Ratio(double pressure, double value, double low, double high) {}

    /**
     * They were compared.
     *
     * @param fraction              of the additive by mass [1]
     * @param pressureLow           lowest pressure that both share within one regime [Pa, absolute]
     * @param pressureHigh          highest such pressure [Pa, absolute]
     * @param ratio                 over these pressures, with a band that holds for all of them at once
     * @param typical               ratio at their geometric middle, with an interval for it alone
     * @param exponentDifference    candidate less baseline [1]
     * @param exponentDifferenceStd its standard uncertainty [1]
     * @param exponentInterval      of the exponents' difference
     * @param coincident            test of one law
     * @param adjustedPValue        of coincidence, after Holm over all tests of the family [1]
     * @param family                how many tests that were
     * @param scatter               relative standard deviation about the two laws [1]
     * @param smallestDetectable    relative change of the rate that these firings would have shown with the stated
     *                              power [1]
     * @param power                 that belongs to it [1]
     * @param differs               whether a difference was shown
     * @param verdict               a sentence with numbers
     */
    record Compared(
            String baseline,
            String candidate,
            Optional<String> additive,
            OptionalDouble fraction,
            double pressureLow,
            double pressureHigh,
            List<Ratio> ratio,
            Ratio typical,
            double exponentDifference,
            double exponentDifferenceStd,
            Interval.Estimated exponentInterval,
            FTest parallel,
            FTest coincident,
            double adjustedPValue,
            int family,
            double scatter,
            double smallestDetectable,
            double power,
            boolean differs,
            String verdict)
            implements Comparison {
        public Compared {
            ratio = List.copyOf(ratio);
        }

        /**
         * The same numbers.
         *
         * @param otherDiffers whether a difference was shown
         */
        Compared with(boolean otherDiffers, String sentence) {
            return new Compared(
                    baseline,
                    candidate,
                    additive,
                    fraction,
                    pressureLow,
                    pressureHigh,
                    ratio,
                    typical,
                    exponentDifference,
                    exponentDifferenceStd,
                    exponentInterval,
                    parallel,
                    coincident,
                    adjustedPValue,
                    family,
                    scatter,
                    smallestDetectable,
                    power,
                    otherDiffers,
                    sentence);
        }
    }

    /**
     * They could not be compared.
     *
     * @param fraction of the additive by mass [1]
     * @param reason   why, and which firing would mend it
     */
    record NotCompared(
            String baseline, String candidate, Optional<String> additive, OptionalDouble fraction, String reason)
            implements Comparison {}

    /**
     * Answers for both cases.
     *
     * @param compared    the answer where there are numbers
     * @param notCompared the answer where there are none
     */
    default <T> T match(Function<Compared, T> compared, Function<NotCompared, T> notCompared) {
        return this instanceof Compared c ? compared.apply(c) : notCompared.apply((NotCompared) this);
    }

    /**
     * An F test of a restriction on a linear model.
     *
     * @param statistic          F [1]
     * @param numeratorDegrees   how many restrictions
     * @param denominatorDegrees of freedom of the residual variance, rounded down
     * @param pValue             [1]
     */
    public record FTest(double statistic, int numeratorDegrees, int denominatorDegrees, double pValue) {

        static FTest of(double extraSquares, int restrictions, double variance, double degrees) {
            double statistic = extraSquares / restrictions / variance;
            return new FTest(
                    statistic,
                    restrictions,
                    // a hair more, so that a whole number that was computed stays the same
                    (int) Math.floor(degrees + 1e-6),
                    FDistribution.of(restrictions, degrees).survivalProbability(statistic));
        }
    }
}
