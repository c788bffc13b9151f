package io.burnlaw.comparison;

/**
 * How propellants are compared.
 *
 * @param level of bands and intervals [1]; a difference is declared at one less it
 * @param power of the smallest effect that is named [1]
 * @param steps how many pressures the ratio is given at, at least 2
 */
public record ComparisonOptions(double level, double power, int steps) {

    public ComparisonOptions {
        if (!(level > 0.5 && level < 1 && power > 1 - level && power < 1) || steps < 2) {
            throw new IllegalArgumentException("level " + level + ", power " + power + ", steps " + steps);
        }
    }

    /** {@return 95 %, power nine in ten, 25 pressures} */
    public static ComparisonOptions defaults() {
        return new ComparisonOptions(0.95, 0.9, 25);
    }

    /**
     * The same with another confidence.
     *
     * @param other level [1]
     */
    public ComparisonOptions withLevel(double other) {
        return new ComparisonOptions(other, power, steps);
    }

    double significance() {
        return 1 - level;
    }
}
