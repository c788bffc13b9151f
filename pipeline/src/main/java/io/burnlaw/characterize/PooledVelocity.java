package io.burnlaw.characterize;

import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.Reduction;
import java.util.List;
import java.util.Optional;

/** The characteristic velocity of a formulation, pooled from its firings. */
final class PooledVelocity {

    private PooledVelocity() {}

    /**
     * The mean over the firings. Its standard uncertainty is the scatter from firing to firing over the root of their
     * number; for a single firing it is that firing's own.
     *
     * @param reduced firings of one formulation
     * @return [m/s]; empty where no firing has one
     */
    static Optional<Measured> of(List<Reduction.Reduced> reduced) {
        List<Measured> all = reduced.stream()
                .flatMap(firing -> firing.characteristicVelocity().stream())
                .toList();
        if (all.size() < 2) {
            return all.stream().findFirst();
        }
        double mean = all.stream().mapToDouble(Measured::value).sum() / all.size();
        double squares = all.stream()
                .mapToDouble(velocity -> (velocity.value() - mean) * (velocity.value() - mean))
                .sum();
        return Optional.of(Measured.of(mean, Math.sqrt(squares / (all.size() - 1) / all.size())));
    }
}
