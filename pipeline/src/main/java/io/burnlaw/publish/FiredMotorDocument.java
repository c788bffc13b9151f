package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Firing;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Firing.FiredMotor;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What was fired, as it stands in the document. */
final class FiredMotorDocument {

    /** The surface is looked at in so many places: between them it hardly bends. */
    private static final int PLACES = 400;

    /** A port of less than this share of the grain's section is none: the grain burns from its ends. */
    private static final double NO_PORT = 1e-9;

    private FiredMotorDocument() {}

    /** {@return one motor; without what its geometry would say where it has none} */
    static FiredMotor of(Firing row) {
        double throat = circle(row.throatDiameter().value());
        @Nullable Grain grain = Grains.of(row.grain()).value().orElse(null);
        return new FiredMotor(
                row.grain().inWords(),
                published(row.propellantMass(), Unit.GRAM),
                published(row.grainTemperature(), Unit.KELVIN),
                published(row.ambientPressure(), Unit.MEGAPASCAL),
                grain == null ? null : digits(surface(grain, 0) / throat),
                grain == null ? null : digits(most(grain) / throat),
                grain == null ? null : digits(surface(grain, PLACES - 1) / throat),
                grain == null ? null : port(row, grain, throat));
    }

    private static double most(Grain grain) {
        double most = 0;
        for (int i = 0; i < PLACES; i++) {
            most = Math.max(most, surface(grain, i));
        }
        return most;
    }

    private static double surface(Grain grain, int place) {
        return grain.surface(grain.web().value() * place / PLACES);
    }

    /** Of the section of the grain, the part that is no propellant, on the mean of its length. */
    private static @Nullable Double port(Firing row, Grain grain, double throat) {
        Optional<Measured> outer = Optional.ofNullable(row.grain().dimensions().get("outer_diameter"));
        if (outer.isEmpty() || grain.envelope().isEmpty()) {
            return null;
        }
        double open = 1 - grain.volume(0) / grain.envelope().getAsDouble();
        return open > NO_PORT ? digits(open * circle(outer.get().value()) / throat) : null;
    }

    /** As many as anybody can use. */
    private static @Nullable Double digits(double ratio) {
        return Double.isFinite(ratio)
                ? Double.valueOf(new BigDecimal(ratio).round(new MathContext(6)).doubleValue())
                : null;
    }

    private static double circle(double diameter) {
        return Math.PI / 4 * diameter * diameter;
    }
}
