package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;

/**
 * A p value by simulation.
 *
 * @param value     share of campaigns, the data among them, at least as extreme as the data [1]
 * @param campaigns simulated
 */
record SimulatedP(double value, int campaigns) {

    boolean rejectsAt(double error) {
        return value <= error + 1e-12;
    }

    /** {@return as it is printed: never smaller than so many campaigns can show} */
    String words() {
        double least = 1.0 / (campaigns + 1);
        return value <= least * 1.0000001
                ? "p ≤ " + NumberFormat.significant(least, 1)
                : NumberFormat.probability(value);
    }
}
