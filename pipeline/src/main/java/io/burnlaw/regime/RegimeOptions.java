package io.burnlaw.regime;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.campaign.Weighting;

/**
 * How regimes are searched.
 *
 * @param seed            of every random number
 * @param level           confidence level of intervals [1]; tests reject at one less this
 * @param replicates      of each bootstrap, at least 99
 * @param weighting       of the points against each other
 * @param maximumSegments most laws side by side, 1 to 5
 * @param minimumPoints   fewest points a law may rest on, at least three
 * @param systematicFloor smallest smooth relative error that reduced rates are taken to share [1]; a point's own
 *                        {@code systematic} counts where it is larger
 * @param limit           up to which pressure an advice may name one
 */
public record RegimeOptions(
        long seed,
        double level,
        int replicates,
        Weighting weighting,
        int maximumSegments,
        int minimumPoints,
        double systematicFloor,
        PressureLimit limit) {

    public RegimeOptions {
        if (!(level > 0.5 && level < 1) || replicates < 99 || !(systematicFloor >= 0)) {
            throw new IllegalArgumentException(
                    "level " + level + ", replicates " + replicates + ", systematic floor " + systematicFloor);
        }
        if (maximumSegments < 1 || maximumSegments > 5 || minimumPoints < 3) {
            throw new IllegalArgumentException(maximumSegments + " segments of " + minimumPoints + " points");
        }
    }

    /**
     * The usual options.
     *
     * @param seed of every random number
     * @return 95 %, 999 replicates, proportional weighting, up to five laws of three points, a floor of 0.3 %
     */
    public static RegimeOptions defaults(long seed) {
        return new RegimeOptions(seed, 0.95, 999, Weighting.PROPORTIONAL, 5, 3, 0.003, PressureLimit.UNSTATED);
    }

    /** The same options with another weighting. */
    public RegimeOptions withWeighting(Weighting other) {
        return new RegimeOptions(
                seed, level, replicates, other, maximumSegments, minimumPoints, systematicFloor, limit);
    }

    /**
     * The same options with another level.
     *
     * @param other confidence level [1]
     */
    public RegimeOptions withLevel(double other) {
        return new RegimeOptions(
                seed, other, replicates, weighting, maximumSegments, minimumPoints, systematicFloor, limit);
    }

    /** The same options for a case of another limit. */
    public RegimeOptions withLimit(PressureLimit other) {
        return new RegimeOptions(
                seed, level, replicates, weighting, maximumSegments, minimumPoints, systematicFloor, other);
    }
}
