package io.burnlaw.regime;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A firing that burned in pulses: it has no rate, but its pressure did not rise. So the pressure at which the slow law
 * balances the flow of its throat is below the threshold: an observation that is censored on one side.
 *
 * @param areaRatio burning surface over throat area at which it stayed down [1]
 * @param balance   pressure over rate at which its chamber is in balance: density · K_n · c* [Pa s/m]
 * @param std       relative standard uncertainty of that [1]
 */
public record PulsedFiring(String id, double areaRatio, double balance, double std) {

    /** From here on a slow law has no steady pressure that could be trusted [1]. */
    private static final double STEEPEST = 0.9;

    /** The one that says most, and the pressure that the threshold is above [Pa, absolute]. */
    record Bound(PulsedFiring firing, double pressure) {

        Finding finding(boolean held) {
            return Finding.of(
                            FindingCode.SLOW_REGIME,
                            "Firing " + firing.id + " pulsed at Kn " + NumberFormat.significant(firing.areaRatio, 3)
                                    + (held
                                            ? " and did not speed up by itself: the threshold is above "
                                                    + Words.pressure(pressure) + "."
                                            : ", where the slow law gives a pressure above the threshold: it pulsed for another reason"
                                                    + " than the slow regime."))
                    .withSeverity(Severity.NOTE);
        }
    }

    /**
     * The bound on a threshold.
     *
     * <pre>
     *     P = balance · r(P),  ln P_low = ln P − sqrt(h² + (z u)²) / (1 − n)
     * </pre>
     *
     * with h the half-width of the prediction of one firing's ln r by the slow law, and z u that of the balance. Of several
     * firings the highest bound counts, each at a level that keeps that of all.
     *
     * @param pulsed firings of the propellant
     * @param slow   law below the threshold
     * @param level  of the threshold's interval [1]
     * @return the bound; empty without such a firing, or where the law is too steep
     */
    static Optional<Bound> above(List<PulsedFiring> pulsed, RateLaw slow, double level) {
        if (pulsed.isEmpty() || !(slow.exponent() < STEEPEST)) {
            return Optional.empty();
        }
        double each = 1 - (1 - level) / pulsed.size();
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - each) / 2);
        Bound best = null;
        for (PulsedFiring firing : pulsed) {
            double power = 1 / (1 - slow.exponent());
            // r = r1 P^n, with r1 the rate at 1 Pa: P = (balance r1)^(1/(1−n))
            double pressure = StrictMath.pow(firing.balance * slow.rate(1), power);
            Optional<Interval.Estimated> rate = slow.predict(pressure, each).estimated();
            if (rate.isEmpty() || !(pressure > 0)) {
                continue;
            }
            double half = StrictMath.log(slow.rate(pressure) / rate.get().low());
            double low = pressure * StrictMath.exp(-power * Math.hypot(half, z * firing.std));
            if (best == null || low > best.pressure) {
                best = new Bound(firing, low);
            }
        }
        return Optional.ofNullable(best);
    }
}
