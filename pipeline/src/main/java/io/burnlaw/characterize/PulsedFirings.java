package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.UsualUncertainty;
import io.burnlaw.regime.PulsedFiring;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Timed firings of which the log says that they burned in pulses: what they say of the threshold of a slow regime. */
final class PulsedFirings {

    private static final int STEPS = 100;

    /** The least step of the rate that is told as a threshold is 1.25. */
    private static final double FALL = 0.8;

    /** Of c*, from firing to firing [1]: common practice, no source. */
    private static final double VELOCITY_SCATTER = 0.01;

    private PulsedFirings() {}

    static List<PulsedFiring> of(Campaign campaign, Formulation formulation, Optional<Measured> velocity) {
        Optional<Measured> density = formulation.density();
        if (density.isEmpty() || velocity.isEmpty()) {
            return List.of();
        }
        double product = density.get().value() * velocity.get().value();
        double std = DoubleStream.of(
                        density.get()
                                        .stdOr(UsualUncertainty.DENSITY
                                                * density.get().value())
                                / density.get().value(),
                        velocity.get().stdOr(0) / velocity.get().value(),
                        VELOCITY_SCATTER)
                .reduce(0, Math::hypot);
        return campaign.firings().stream()
                .filter(firing -> firing.pulsed()
                        && firing.trace().isEmpty()
                        && firing.setAside().isEmpty()
                        && firing.formulation().equals(formulation.id()))
                .flatMap(firing ->
                        Grains.of(firing.grain()).value().stream().map(grain -> of(firing, grain, product, std)))
                .toList();
    }

    /**
     * It was down at its start: had it come up, it would have stayed up, since the surface never falls by as much as the
     * rate across a threshold. Where it does fall so, when it pulsed is not known, and the smallest surface counts.
     */
    private static PulsedFiring of(Firing firing, Grain grain, double product, double std) {
        double first = grain.surface(0);
        double least = IntStream.range(0, STEPS)
                .mapToDouble(i -> grain.surface(i * grain.burnout() / STEPS))
                .min()
                .orElseThrow();
        double throat = firing.throatDiameter().value();
        double ratio = (least > FALL * first ? first : least) / (Math.PI / 4 * throat * throat);
        double ofThroat = 2 * firing.throatDiameter().stdOr(UsualUncertainty.THROAT) / throat;
        return new PulsedFiring(firing.id(), ratio, product * ratio, Math.hypot(std, ofThroat));
    }
}
