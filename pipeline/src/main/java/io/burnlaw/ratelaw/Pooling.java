package io.burnlaw.ratelaw;

import io.burnlaw.finding.Finding;
import java.util.List;
import java.util.Optional;

/** The exponent from the rates along several burns, or why there is none. */
public sealed interface Pooling {

    /**
     * An exponent by one way, or its difference by two.
     *
     * @param value    [1]
     * @param std      its standard uncertainty [1]
     * @param interval [1]
     */
    record Exponent(double value, double std, double degreesOfFreedom, Interval interval) {}

    /**
     * The burns were pooled.
     *
     * @param within        exponent along the burns
     * @param between       exponent between the firings' means
     * @param difference    within less between
     * @param pValue        of so large a difference if both were the same [1]
     * @param firingScatter relative standard deviation from firing to firing about the law, the random effect [1]
     * @param law           with the exponent of both, weighted by their variances
     * @param firings       how many had a curve
     * @param findings      whether within and between disagree
     */
    record Pooled(
            Exponent within,
            Exponent between,
            Exponent difference,
            double pValue,
            double firingScatter,
            RateLaw law,
            int firings,
            String sentence,
            List<Finding> findings)
            implements Pooling {
        public Pooled {
            findings = List.copyOf(findings);
        }
    }

    /**
     * They could not be pooled.
     *
     * @param mend a sentence that says which firing would help
     */
    record NotPooled(String reason, String mend) implements Pooling {}

    /** {@return what the burns say together, where they can be pooled} */
    default Optional<Pooled> pooled() {
        return this instanceof Pooled p ? Optional.of(p) : Optional.empty();
    }
}
