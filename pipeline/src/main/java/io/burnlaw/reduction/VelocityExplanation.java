package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What would bring a c* to where it is expected, each error on its own: c* = integral of P·A_t dt over m_p, so it goes
 * with the pressure and with time, with the square of the throat's diameter, and against the mass or the density.
 */
final class VelocityExplanation {

    private record Unit(String name, double size) {}

    private static final List<Unit> PRESSURES =
            List.of(new Unit("kPa", 1e3), new Unit("psi", 6894.757), new Unit("bar", 1e5), new Unit("MPa", 1e6));

    private static final List<Unit> LENGTHS =
            List.of(new Unit("mm", 1e-3), new Unit("cm", 1e-2), new Unit("in", 0.0254));

    private static final List<Unit> MASSES =
            List.of(new Unit("g", 1e-3), new Unit("oz", 0.028349523), new Unit("lb", 0.45359237), new Unit("kg", 1));

    private static final List<Unit> TIMES = List.of(new Unit("ms", 1e-3), new Unit("s", 1));

    /** How near a factor must come to that of two units, where the right c* is known well [1]. */
    private static final double NEAR = 0.12;

    private VelocityExplanation() {}

    /**
     * Sentences to be put behind what was seen, each beginning with a blank.
     *
     * @param burn  what was measured
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
                "a throat of %s%.4g mm instead of %.4g mm", atLeast, 1e3 * throat / Math.sqrt(ratio), 1e3 * throat));
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
                    " The mass is the likely one: it is %.3g times what density and volume of the grain give.",
                    ofMass.get());
        }
        return Math.abs(StrictMath.log(ofMass.get())) < MassReview.USUAL
                ? " The mass is not it: it agrees with density and volume of the grain."
                : "";
    }
}
