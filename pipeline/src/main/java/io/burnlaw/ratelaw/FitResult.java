package io.burnlaw.ratelaw;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.finding.Finding;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** Result of a fit: a law and how it was made, or why there is none. */
public sealed interface FitResult {

    /**
     * A law was fitted.
     *
     * @param pressureErrors what was really done about the uncertainty of the pressures; none where no point has any
     * @param intervals      of coefficient, exponent and rate at the reference pressure by each method, side by side
     * @param published      the method whose intervals are shown elsewhere
     * @param residuals      one for each point, in the order of the points
     * @param lackOfFit      where firings were repeated at one pressure
     * @param others         the same points fitted in other ways
     */
    record Fitted(
            RateLaw law,
            PressureErrors pressureErrors,
            List<MethodIntervals> intervals,
            Interval.Method published,
            List<Residual> residuals,
            Optional<LackOfFit> lackOfFit,
            List<OtherFit> others,
            List<Finding> findings)
            implements FitResult {
        public Fitted {
            intervals = List.copyOf(intervals);
            residuals = List.copyOf(residuals);
            others = List.copyOf(others);
            findings = List.copyOf(findings);
        }

        /** {@return the intervals of the published method} */
        public MethodIntervals publishedIntervals() {
            return intervals.stream()
                    .filter(each -> each.method() == published)
                    .findFirst()
                    .orElseThrow();
        }
    }

    /**
     * There is no law.
     *
     * @param mend a sentence that says which firing would help
     */
    record NotFitted(String reason, String mend) implements FitResult {}

    /** {@return the law and how it was made, where there is one} */
    default Optional<Fitted> fitted() {
        return this instanceof Fitted f ? Optional.of(f) : Optional.empty();
    }

    /**
     * Answers for both cases.
     *
     * @param fitted    the answer where there is a law
     * @param notFitted the answer where there is none
     */
    default <T> T match(Function<Fitted, T> fitted, Function<NotFitted, T> notFitted) {
        return this instanceof Fitted f ? fitted.apply(f) : notFitted.apply((NotFitted) this);
    }

    /**
     * Whether repeated firings agree better with each other than with the law.
     *
     * @param statistic   F, lack of fit over pure error [1]
     * @param pValue      of so large an F if the law were right [1]
     * @param pureScatter relative standard deviation of repeated firings [1]
     */
    public record LackOfFit(
            double statistic, int lackDegreesOfFreedom, int pureDegreesOfFreedom, double pValue, double pureScatter) {}

    /**
     * The intervals that one method gives.
     *
     * @param method          by which they were made
     * @param coefficient     of a, the rate at 1 MPa [m/s]
     * @param exponent        of n [1]
     * @param rateAtReference of the rate at the reference pressure [m/s]
     */
    public record MethodIntervals(
            Interval.Method method,
            Interval coefficient,
            Interval exponent,
            Interval rateAtReference,
            OptionalInt replicates) {}

    /**
     * The same points fitted in another way, for comparison.
     *
     * @param name        such as {@code huber} or {@code orthogonal-distance}
     * @param coefficient interval of a, the rate at 1 MPa [m/s]
     * @param exponent    interval of n [1]
     * @param sentence    how it differs from the published fit
     */
    public record OtherFit(String name, RateLaw law, Interval coefficient, Interval exponent, String sentence) {}

    /**
     * The residual of a point from the law.
     *
     * @param pressure              [Pa, absolute]
     * @param rate                  measured [m/s]
     * @param fitted                by the law [m/s]
     * @param lnResidual            natural logarithm of measured over fitted [1]
     * @param leverage              how much the point pulls the law towards itself [1], 0 to 1
     * @param studentized           residual over its own standard deviation [1], internally studentized
     * @param externallyStudentized the same with the scatter judged by the other points [1]; where fewer than two
     *                              degrees of freedom are left, the internally studentized one
     * @param pValue                of so large a residual among so many points [1], Bonferroni
     * @param influence             Cook's distance [1]
     */
    record Residual(
            String id,
            double pressure,
            double rate,
            double fitted,
            double lnResidual,
            double leverage,
            double studentized,
            double externallyStudentized,
            double pValue,
            double influence) {}
}
