package io.burnlaw.characterize;

import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.Reduction;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The characteristic velocity of a formulation, pooled from its firings. */
final class PooledVelocity {

    private PooledVelocity() {}

    /**
     * Whether the mass, the throat and the pressures of a firing are believed: nothing told against the c* that they
     * give. A mass in the wrong unit leaves the rate of its firing as it was, but not the mean of all c*, nor the
     * density of the grains.
     *
     * @return whether its c* may speak for the propellant
     */
    static boolean believed(Reduction.Reduced firing) {
        return firing.findings().stream().noneMatch(finding -> finding.code() == FindingCode.IMPLAUSIBLE_CSTAR);
    }

    /**
     * The firings whose c* may speak for the propellant: those that are believed. Where most are not, all of them: then
     * what is wrong is what they were held against.
     *
     * @param all firings, or what was made of them
     * @return some of them, in their order
     */
    static <T> List<T> believed(List<T> all, Function<T, Reduction.Reduced> reduced) {
        List<T> believed =
                all.stream().filter(each -> believed(reduced.apply(each))).toList();
        return 2 * believed.size() < all.size() ? all : believed;
    }

    /**
     * The mean over the firings that are believed. Its variance is that of the scatter from firing to firing over their
     * number, and what all of them share beside it: the gauge, the igniter, the scale. Nothing tells the shared part of a
     * firing's own uncertainty from the rest, and it is most of it: the median of the firings' own is taken as shared. For a
     * single firing it is that firing's own.
     *
     * @param reduced firings of one formulation
     * @return [m/s]; empty where no firing has one
     */
    static Optional<Measured> of(List<Reduction.Reduced> reduced) {
        List<Measured> all = believed(reduced, Function.identity()).stream()
                .flatMap(firing -> firing.characteristicVelocity().stream())
                .toList();
        if (all.size() < 2) {
            return all.stream().findFirst();
        }
        double mean = all.stream().mapToDouble(Measured::value).sum() / all.size();
        double squares = all.stream()
                .mapToDouble(velocity -> (velocity.value() - mean) * (velocity.value() - mean))
                .sum();
        double[] own = all.stream().mapToDouble(each -> each.stdOr(0)).sorted().toArray();
        double shared = own[own.length / 2];
        return Optional.of(Measured.of(mean, Math.hypot(shared, Math.sqrt(squares / (all.size() - 1) / all.size()))));
    }
}
