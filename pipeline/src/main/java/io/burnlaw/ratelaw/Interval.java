package io.burnlaw.ratelaw;

import java.util.Optional;

/** The range of a value at a stated confidence, or why it is unknown. */
public sealed interface Interval {

    /**
     * An interval.
     *
     * @param low    its lower end
     * @param high   its upper end
     * @param level  of confidence [1]
     * @param method how it was made
     */
    record Estimated(double low, double high, double level, Method method) implements Interval {
        public Estimated {
            if (!(low <= high)) {
                throw new IllegalArgumentException("an interval from " + low + " to " + high);
            }
        }
    }

    /**
     * These data give no interval.
     *
     * @param reason a sentence that says why, and which firing would help
     */
    record NotEstimable(String reason) implements Interval {}

    /** How an interval was made. */
    enum Method {
        /** From the covariance and Student's t. */
        STUDENT_T,
        /** From the covariance and degrees of freedom of Kenward and Roger (1997), where there are batches. */
        KENWARD_ROGER,
        /** From the profile of the sum of squares (Bates and Watts 1988). */
        PROFILE,
        /** Bias-corrected accelerated bootstrap over firings (Efron 1987). */
        BOOTSTRAP_BCA
    }

    /** {@return the interval, where there is one} */
    default Optional<Estimated> estimated() {
        return this instanceof Estimated e ? Optional.of(e) : Optional.empty();
    }
}
