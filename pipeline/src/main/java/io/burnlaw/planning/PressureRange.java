package io.burnlaw.planning;

import java.util.Optional;

/**
 * Mean pressures among which firings are planned.
 *
 * @param low  [Pa, absolute]
 * @param high [Pa, absolute]
 */
public record PressureRange(double low, double high) {

    /** A throat chokes surely from here on, in ambient pressures. */
    private static final double CHOKED = 2.2;

    /** Below this span there is nothing to choose. */
    private static final double LEAST_SPAN = 1.02;

    /** As far as the case and the slow regime allow, but not far beyond what was fired. */
    static PressureRange of(PlanBasis basis, PlanOptions options, PressureCeiling ceiling, Throats throats) {
        boolean guess = basis.points().isEmpty();
        double mean = Double.isFinite(throats.smallest()) ? throats.meanAt(throats.smallest()) : 0;
        double known =
                guess ? Double.POSITIVE_INFINITY : options.reach() * basis.law().pressureHigh();
        double from = guess ? 0 : basis.law().pressureLow() / options.reach();
        double choked = CHOKED * basis.motor().ambientPressure();
        return new PressureRange(
                Math.max(Math.max(from, choked), Throats.MARGIN * ceiling.floor()), Math.min(mean, known));
    }

    /** The part of it that was asked for; empty where nothing of that is in it. */
    Optional<PressureRange> within(PressureRange asked) {
        PressureRange common = new PressureRange(Math.max(low, asked.low), Math.min(high, asked.high));
        return common.low <= common.high ? Optional.of(common) : Optional.empty();
    }

    boolean isEmpty() {
        return !(high > low * LEAST_SPAN);
    }

    boolean holds(double pressure) {
        return pressure >= low && pressure <= high;
    }

    /** The geometric middle. */
    double middle() {
        return Math.sqrt(low * high);
    }

    /** Evenly spread in ln P, both ends among them. */
    double[] steps(int count) {
        double[] pressures = new double[count];
        for (int i = 0; i < count; i++) {
            pressures[i] = low * StrictMath.pow(high / low, (double) i / (count - 1));
        }
        return pressures;
    }
}
