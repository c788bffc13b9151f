package io.burnlaw.comparison;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Power of an F test: the noncentral F distribution as a Poisson mixture of incomplete beta functions.
 *
 * <pre>
 *     P(F &lt;= f) = sum over j of exp(-h) h^j / j! · I_y(d1/2 + j, d2/2)     h = lambda / 2,  y = d1 f / (d1 f + d2)
 * </pre>
 *
 * <p><b>Source.</b> Abramowitz and Stegun (1964), 26.6.20.
 */
final class NoncentralF {

    private NoncentralF() {}

    /**
     * Probability that F is above a value.
     *
     * @param value              f, at least zero
     * @param numeratorDegrees   d1
     * @param denominatorDegrees d2
     * @param noncentrality      lambda, at least zero
     * @return [1]
     */
    static double survival(double value, int numeratorDegrees, double denominatorDegrees, double noncentrality) {
        double half = noncentrality / 2;
        double y = numeratorDegrees * value / (numeratorDegrees * value + denominatorDegrees);
        double sum = 0;
        // beyond ten standard deviations the Poisson weights are below 1e-20
        int from = (int) Math.max(0, half - 10 * Math.sqrt(half) - 5);
        int to = (int) (half + 10 * Math.sqrt(half) + 30);
        for (int j = from; j <= to; j++) {
            double weight = half == 0
                    ? (j == 0 ? 1 : 0)
                    : StrictMath.exp(-half + j * StrictMath.log(half) - Gamma.logGamma(j + 1.0));
            if (weight > 0) {
                sum += weight * Beta.regularizedBeta(y, numeratorDegrees / 2.0 + j, denominatorDegrees / 2.0);
            }
        }
        return Math.min(1, Math.max(0, 1 - sum));
    }

    /**
     * The noncentrality at which a test has a power.
     *
     * @param numeratorDegrees   d1
     * @param denominatorDegrees d2
     * @param significance       of the test [1]
     * @param power              [1], above the significance
     * @return lambda
     */
    static double noncentrality(int numeratorDegrees, double denominatorDegrees, double significance, double power) {
        double critical =
                FDistribution.of(numeratorDegrees, denominatorDegrees).inverseSurvivalProbability(significance);
        UnivariateFunction lack = lambda -> survival(critical, numeratorDegrees, denominatorDegrees, lambda) - power;
        // common tests need 8 to 20: from there the bracket is mostly right at once
        double high = 16;
        while (lack.value(high) < 0 && high < 1e7) {
            high *= 2;
        }
        return new BrentSolver(1e-12, 1e-12).solve(200, lack, 0, high);
    }
}
