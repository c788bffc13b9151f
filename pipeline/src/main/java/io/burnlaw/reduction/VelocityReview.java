package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether the c* that closes the pressure integral can be true: against the stated one of the propellant, or, where
 * none is stated, against what solid propellants give at all.
 */
final class VelocityReview {

    /** A c* within this of the stated one is accepted, whatever the uncertainties [1]. */
    private static final double CLOSE = 0.06;

    /** A small motor may lose this much more by heat and incomplete burning [1]: common practice, no source. */
    private static final double LOSSES = 0.06;

    /** Standard uncertainty of a stated c* that says none [1]. */
    private static final double UNSTATED = 0.04;

    private static final double STDS = 3;

    /** Further off than this the pressure of the firing is doubtful too [1]. */
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
                "c* from the pressure integral is %.4g m/s, %.3g times the %.4g m/s that are stated for the"
                        + " propellant (%.2f to %.2f times is accepted).",
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

    /**
     * What would bring a c* to where it is expected, each error on its own: c* = integral of P·A_t dt over m_p, so it goes
     * with the pressure and with time, with the square of the throat's diameter, and against the mass or the density.
     */
    private static final class VelocityExplanation {

        private record Unit(String name, double size) {}

        private static final List<Unit> PRESSURES =
                List.of(new Unit("kPa", 1e3), new Unit("psi", 6894.757), new Unit("bar", 1e5), new Unit("MPa", 1e6));

        private static final List<Unit> LENGTHS =
                List.of(new Unit("mm", 1e-3), new Unit("cm", 1e-2), new Unit("in", 0.0254));

        private static final List<Unit> MASSES = List.of(
                new Unit("g", 1e-3), new Unit("oz", 0.028349523), new Unit("lb", 0.45359237), new Unit("kg", 1));

        private static final List<Unit> TIMES = List.of(new Unit("ms", 1e-3), new Unit("s", 1));

        /** How near a factor must come to that of two units, where the right c* is known well [1]. */
        private static final double NEAR = 0.12;

        private VelocityExplanation() {}

        /**
         * Sentences to be put behind what was seen, each beginning with a blank.
         *
         * @param ratio c* over the expected one [1], not 1
         * @param known whether the expected one is known, or only its bound
         * @return what would explain it
         */
        static String of(Burn burn, double ratio, boolean known) {
            List<String> by = new ArrayList<>();
            Firing row = burn.firing();
            double throat = row.throatDiameter().value();
            String atLeast = known ? "" : ratio > 1 ? "at most " : "at least ";
            row.propellantMass()
                    .ifPresentOrElse(
                            mass -> by.add(Sentence.of(
                                    "a propellant mass of %s%.4g g instead of %.4g g",
                                    known ? "" : ratio > 1 ? "at least " : "at most ",
                                    1e3 * mass.value() * ratio,
                                    1e3 * mass.value())),
                            () -> burn.formulation()
                                    .density()
                                    .ifPresent(density -> by.add(Sentence.of(
                                            "a density of %s%.3g g/cm3 instead of %.3g g/cm3",
                                            known ? "" : ratio > 1 ? "at least " : "at most ",
                                            1e-3 * density.value() * ratio,
                                            1e-3 * density.value()))));
            by.add(Sentence.of(
                    "a throat of %s%.4g mm instead of %.4g mm",
                    atLeast, 1e3 * throat / Math.sqrt(ratio), 1e3 * throat));
            by.add(Sentence.of("a pressure %s%.3g times what was read", atLeast, 1 / ratio));
            return " What would explain it: " + String.join(", or ", by) + "."
                    + units(ratio, known)
                    + mass(burn, ratio, known);
        }

        private static String units(double ratio, boolean known) {
            List<String> mistaken = new ArrayList<>();
            mistaken.addAll(mistaken("a pressure column", PRESSURES, 1, ratio, known));
            mistaken.addAll(mistaken("a time column", TIMES, 1, ratio, known));
            mistaken.addAll(mistaken("a throat", LENGTHS, 2, ratio, known));
            mistaken.addAll(mistaken("a mass", MASSES, -1, ratio, known));
            return mistaken.isEmpty() ? "" : " The factor is that of " + String.join(", or of ", mistaken) + ".";
        }

        private static List<String> mistaken(String what, List<Unit> units, int power, double ratio, boolean known) {
            List<String> mistaken = new ArrayList<>();
            for (Unit read : units) {
                for (Unit meant : units) {
                    if (read != meant && explains(StrictMath.pow(read.size() / meant.size(), power), ratio, known)) {
                        mistaken.add(what + " in " + meant.name() + " that was read as " + read.name());
                    }
                }
            }
            return mistaken;
        }

        private static boolean explains(double factor, double ratio, boolean known) {
            if (known) {
                return Math.abs(StrictMath.log(factor / ratio)) < NEAR;
            }
            // Only a bound is known: the true c* lies anywhere between the bounds, whose quotient is 6.3.
            double beyond = ratio > 1 ? factor / ratio : ratio / factor;
            return factor > 1 == ratio > 1 && beyond >= 1 && beyond <= 6.3;
        }

        /** Mass against density and volume acquits the mass, or convicts it. */
        private static String mass(Burn burn, double ratio, boolean known) {
            Optional<Double> ofMass = MassReview.ratio(burn);
            if (!known || ofMass.isEmpty()) {
                return "";
            }
            if (MassReview.explains(burn, ratio)) {
                return String.format(
                        Locale.ROOT,
                        " The mass is the likely cause: it is %.3g times what density and volume of the grain give.",
                        ofMass.get());
            }
            return Math.abs(StrictMath.log(ofMass.get())) < MassReview.USUAL
                    ? " The mass is not the cause: it agrees with density and volume of the grain."
                    : "";
        }
    }
}
