package io.burnlaw.reduction.screening;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Whether the pressure fell faster than the chamber can empty through its throat, and with web left.
 *
 * <pre>
 *     tau  = V / (A_t c* Gamma^2)                       time in which an empty chamber falls by e         [s]
 *     fast = tau · (-d ln P / dt), between seven and a quarter tenths of the pressure before the fall     [1]
 *     left = 1 - integral of P·A_t dt / (c* · m_p)      where c* is stated                                [1]
 * </pre>
 * A motor that burns out has {@code fast} at 1 or below, and {@code left} near 0, whatever its grain.
 *
 * <p><b>Source.</b> Blow-down of a chamber: derived from continuity; docs/methods.md, Findings.
 */
final class Collapse {

    /** With web left, this much faster than the chamber alone is no burnout [1]. */
    private static final double FAST = 1.6;

    /** Where no c* is stated, so that the web left is unknown, only this is accepted [1]. */
    private static final double VERY_FAST = 3;

    /** More left than mass, throat and c* can be wrong by [1]. */
    private static final double LEFT = 0.12;

    /** Where this much seems left after a record that looks like a whole burn, the log may be wrong instead [1]. */
    private static final double DOUBTFUL = 0.6;

    private static final double UNSTATED_CSTAR = 900;

    private Collapse() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        if (shape.mainFall() >= shape.size() || shape.mainFall() < 2) {
            return List.of();
        }
        double before = levelBefore(shape);
        double upper = crossing(shape, 0.70 * before);
        double lower = crossing(shape, 0.25 * before);
        if (!(lower > upper)) {
            return List.of();
        }
        double ambient = burn.firing().ambientPressure();
        double fall = Math.log((0.70 * before + ambient) / (0.25 * before + ambient)) / (lower - upper);
        double tau = emptyingTime(burn);
        double fast = tau * fall;
        OptionalDouble left = left(burn, shape);
        boolean collapsed = left.isPresent() ? fast > FAST && left.getAsDouble() > LEFT : fast > VERY_FAST;
        if (!collapsed) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.PRESSURE_COLLAPSE,
                Sentence.of(
                        "At %.5g s the pressure fell from %.3g MPa to %.3g MPa gauge within %.2g ms, %.2g times as fast"
                                + " as the chamber can empty through its throat%s.%s",
                        upper,
                        0.70 * before / 1e6,
                        0.25 * before / 1e6,
                        1e3 * (lower - upper),
                        fast,
                        left.isPresent()
                                ? String.format(
                                        Locale.ROOT,
                                        ", with %.0f %% of the propellant left by the pressure integral",
                                        100 * left.getAsDouble())
                                : "",
                        left.orElse(0) > DOUBTFUL
                                ? Sentence.of(
                                        " If nothing burst, the log is wrong: the throat, %.4g mm, or the mass, or the unit of"
                                                + " the pressure.",
                                        1e3 * burn.firing().throatDiameter().value())
                                : ""),
                upper));
    }

    /** Median over the last tenth of the main burn before its fall. */
    private static double levelBefore(BurnShape shape) {
        int end = shape.mainFall();
        int from = Math.max(shape.mainRise(), end - Math.max(4, (end - shape.mainRise()) / 10));
        return BurnShape.median(shape.gauge(), from, Math.max(from + 1, end));
    }

    /** When the pressure last crosses a level about the fall, between samples [s]. */
    private static double crossing(BurnShape shape, double level) {
        double[] gauge = shape.gauge();
        int i = shape.mainFall();
        while (i < shape.size() - 1 && gauge[i] > level) {
            i++;
        }
        while (i > 1 && gauge[i - 1] <= level) {
            i--;
        }
        double share = (gauge[i - 1] - level) / (gauge[i - 1] - gauge[i]);
        return shape.time()[i - 1] + Math.max(0, Math.min(1, share)) * (shape.time()[i] - shape.time()[i - 1]);
    }

    private static double cstar(Burn burn) {
        return burn.formulation().characteristicVelocity().map(Measured::value).orElse(UNSTATED_CSTAR);
    }

    private static double emptyingTime(Burn burn) {
        Gas gas = new Gas(
                cstar(burn), burn.formulation().specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO));
        double chamber = burn.firing().chamberVolume().map(Measured::value).orElse(Double.NaN);
        double volume = Motor.freeVolume(burn.grain(), chamber) + burn.grain().volume(0);
        return volume / (throatArea(burn) * gas.characteristicVelocity() * gas.flowFactor() * gas.flowFactor());
    }

    private static double throatArea(Burn burn) {
        double before = burn.firing().throatDiameter().value();
        double after = burn.firing().throatDiameterAfter().map(Measured::value).orElse(before);
        double diameter = 0.5 * (before + after);
        return Math.PI / 4 * diameter * diameter;
    }

    private static OptionalDouble left(Burn burn, BurnShape shape) {
        OptionalDouble mass = burn.firing().propellantMass().stream()
                .mapToDouble(Measured::value)
                .findFirst();
        OptionalDouble ofDensity = burn.formulation().density().stream()
                .mapToDouble(density -> density.value() * burn.grain().volume(0))
                .findFirst();
        if (burn.formulation().characteristicVelocity().isEmpty() || mass.isEmpty() && ofDensity.isEmpty()) {
            return OptionalDouble.empty();
        }
        double expelled = mass.orElseGet(ofDensity::getAsDouble) * cstar(burn);
        double integral = throatArea(burn)
                * shape.absoluteIntegral(
                        shape.rise(), shape.fall(), burn.firing().ambientPressure());
        return OptionalDouble.of(1 - integral / expelled);
    }
}
