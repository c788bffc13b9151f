package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.LikelyCause;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether the grain's mass, its volume by its dimensions, and the propellant's density agree. */
final class MassReview {

    /** Voids and calipers explain as much as this [1]: common practice, no source. */
    static final double USUAL = 0.05;

    private static final double STDS = 3;

    private MassReview() {}

    /** {@return mass over what density and volume give [1]; empty where mass or density is not known} */
    static Optional<Double> ratio(Burn burn) {
        return burn.firing()
                .propellantMass()
                .flatMap(mass -> burn.formulation()
                        .density()
                        .map(density ->
                                mass.value() / (density.value() * burn.grain().volume(0))));
    }

    /**
     * Whether a wrong mass, and nothing else, explains a wrong c*.
     *
     * @param velocity c* over the expected one [1]
     * @return whether density and volume ask for the same correction of the mass
     */
    static boolean explains(Burn burn, double velocity) {
        return ratio(burn)
                .filter(mass -> Math.abs(StrictMath.log(mass * velocity)) < USUAL)
                .filter(mass -> Math.abs(StrictMath.log(mass)) > USUAL)
                .isPresent();
    }

    static List<Finding> look(BurnReduction reduction) {
        Burn burn = reduction.burn();
        Optional<Double> ratio = ratio(burn);
        List<Finding> impossible = impossible(burn.firing(), burn.grain());
        if (ratio.isEmpty() || !impossible.isEmpty()) {
            return impossible;
        }
        Firing row = burn.firing();
        Measured mass = row.propellantMass().orElseThrow();
        Measured density = burn.formulation().density().orElseThrow();
        double web = 2 * reduction.webStd() / reduction.inputs().grain().web();
        double std = Math.hypot(
                Math.hypot(relative(mass, UsualUncertainty.MASS), relative(density, UsualUncertainty.DENSITY)), web);
        if (!(Math.abs(ratio.get() - 1) > Math.max(USUAL, STDS * std))) {
            return List.of();
        }
        return List.of(Finding.of(
                FindingCode.GRAIN_MASS,
                Sentence.of(
                        "%s%.4g g in a grain of %.4g cm3 give %.3g g/cm3, %.0f %% %s than the propellant's %.3g g/cm3.",
                        cause(ratio.get(), row.grain().segments()),
                        1e3 * mass.value(),
                        1e6 * burn.grain().volume(0),
                        1e-3 * mass.value() / burn.grain().volume(0),
                        100 * Math.abs(ratio.get() - 1),
                        ratio.get() > 1 ? "more" : "less",
                        1e-3 * density.value())));
    }

    /** Mass over volume that no solid propellant has: then a length or the mass is in the wrong unit. */
    static List<Finding> impossible(Firing firing, Grain grain) {
        double volume = grain.volume(0);
        return firing
                .propellantMass()
                .map(Measured::value)
                .filter(mass -> mass < Plausible.DENSITY.low() * volume || mass > Plausible.DENSITY.high() * volume)
                .map(mass -> Finding.of(
                                FindingCode.GRAIN_MASS,
                                Sentence.of(
                                        "%s%.4g g in a grain of %.4g cm3 give %.3g g/cm3; solid propellants have %.2g g/cm3 to %.2g"
                                                + " g/cm3.",
                                        cause(
                                                mass / (volume * LikelyCause.USUAL_DENSITY),
                                                firing.grain().segments()),
                                        1e3 * mass,
                                        1e6 * volume,
                                        1e-3 * mass / volume,
                                        1e-3 * Plausible.DENSITY.low(),
                                        1e-3 * Plausible.DENSITY.high()))
                        .withSeverity(Severity.REJECTION))
                .stream()
                .toList();
    }

    private static double relative(Measured measured, double usual) {
        return measured.stdOr(usual * measured.value()) / measured.value();
    }

    private static String cause(double ratio, int segments) {
        return LikelyCause.ofMass(ratio, segments)
                .map(words -> words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ". ")
                .orElse("");
    }
}
