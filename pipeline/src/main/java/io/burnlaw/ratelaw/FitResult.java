package io.burnlaw.ratelaw;

import io.burnlaw.finding.Finding;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What came of a fit: a law and how it was made, or why there is none. */
public sealed interface FitResult {

    /**
     * A law was fitted.
     *
     * @param law            with its covariance
     * @param options        that it was fitted with
     * @param pressureErrors what was really done about the uncertainty of the pressures; none where no point has any
     * @param intervals      of coefficient, exponent and rate at the reference pressure by each method, side by side
     * @param published      the method whose intervals are shown elsewhere
     * @param residuals      one for each point, in the order of the points
     * @param checks         of the solution, by name
     * @param lackOfFit      where firings were repeated at one pressure
     * @param others         the same points fitted in other ways
     * @param findings       about the law
     */
    record Fitted(
            RateLaw law,
            FitOptions options,
            PressureErrors pressureErrors,
            List<MethodIntervals> intervals,
            Interval.Method published,
            List<Residual> residuals,
            List<Check> checks,
            Optional<LackOfFit> lackOfFit,
            List<OtherFit> others,
            List<Finding> findings)
            implements FitResult {
        public Fitted {
            intervals = List.copyOf(intervals);
            residuals = List.copyOf(residuals);
            checks = List.copyOf(checks);
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
     * @param reason a sentence that says why
     * @param mend   a sentence that says which firing would change that
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
     * @param <T>       of the answer
     * @return the answer
     */
    default <T> T match(Function<Fitted, T> fitted, Function<NotFitted, T> notFitted) {
        return this instanceof Fitted f ? fitted.apply(f) : notFitted.apply((NotFitted) this);
    }
}
