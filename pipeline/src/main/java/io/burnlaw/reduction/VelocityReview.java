package io.burnlaw.reduction;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import java.util.List;
import java.util.Optional;

/**
 * Whether the c* that closes the pressure integral can be true: against the stated one of the propellant, or, where
 * nobody stated one, against what solid propellants give at all.
 */
final class VelocityReview {

    /** A c* within this of the stated one is believed, whatever the uncertainties say [1]. */
    private static final double CLOSE = 0.06;

    /** A small motor may lose this much more by heat and incomplete burning [1]: common practice, no source. */
    private static final double LOSSES = 0.06;

    /** Standard uncertainty of a stated c* that says none [1]. */
    private static final double UNSTATED = 0.04;

    private static final double STDS = 3;

    /** Further off than this the pressure of the firing cannot be believed either [1]. */
    private static final double HOPELESS = 2;

    private VelocityReview() {}

    static List<Finding> look(BurnReduction reduction) {
        Optional<Measured> found = reduction.characteristicVelocity();
        if (found.isEmpty()) {
            return List.of();
        }
        Optional<Measured> stated = reduction.burn().formulation().characteristicVelocity();
        Optional<String> seen = stated.isPresent() ? besideStated(found.get(), stated.get()) : alone(found.get());
        double expected = stated.map(Measured::value)
                .orElse(
                        found.get().value() > Plausible.MEASURED_VELOCITY.high()
                                ? Plausible.MEASURED_VELOCITY.high()
                                : Plausible.MEASURED_VELOCITY.low());
        double ratio = found.get().value() / expected;
        boolean hopeless = ratio > HOPELESS || ratio < 1 / HOPELESS;
        // A wrong mass moves neither pressures nor rates, which are closed on their own integral.
        boolean onlyMass = stated.isPresent() && MassReview.explains(reduction.burn(), ratio);
        Severity severity = hopeless && !onlyMass ? Severity.REJECTION : Severity.CAUTION;
        return seen
                .map(sentence -> Finding.of(
                                FindingCode.IMPLAUSIBLE_CSTAR,
                                sentence + VelocityExplanation.of(reduction.burn(), ratio, stated.isPresent()))
                        .withSeverity(severity))
                .stream()
                .toList();
    }

    private static Optional<String> besideStated(Measured found, Measured stated) {
        double off = found.value() / stated.value() - 1;
        double std =
                Math.hypot(found.stdOr(0) / found.value(), stated.stdOr(UNSTATED * stated.value()) / stated.value());
        double allowed = Math.max(CLOSE, STDS * std);
        if (off <= allowed && off >= -allowed - LOSSES) {
            return Optional.empty();
        }
        return Optional.of(Sentence.of(
                "c* from the pressure integral is %.4g m/s, %.3g times the %.4g m/s that are stated for the propellant"
                        + " (from %.2f to %.2f times would pass).",
                found.value(), found.value() / stated.value(), stated.value(), 1 - allowed - LOSSES, 1 + allowed));
    }

    private static Optional<String> alone(Measured found) {
        if (found.value() >= Plausible.MEASURED_VELOCITY.low() && found.value() <= Plausible.MEASURED_VELOCITY.high()) {
            return Optional.empty();
        }
        return Optional.of(Sentence.of(
                "c* from the pressure integral is %.4g m/s; solid propellants give %.0f m/s to %.0f m/s.",
                found.value(), Plausible.MEASURED_VELOCITY.low(), Plausible.MEASURED_VELOCITY.high()));
    }
}
