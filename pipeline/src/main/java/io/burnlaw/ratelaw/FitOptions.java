package io.burnlaw.ratelaw;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.campaign.Weighting;

/**
 * How a law is to be fitted.
 *
 * @param weighting      of the points against each other
 * @param pressureErrors what is done where points carry an uncertainty of the pressure; without such points all are alike
 * @param level          confidence of the intervals [1], between 0.5 and 0.999
 * @param robust         whether a Huber fit is reported beside the plain one
 * @param replicates     of the bootstrap; 0 for none
 * @param limit          up to which pressure an advice may name one
 */
public record FitOptions(
        Weighting weighting,
        PressureErrors pressureErrors,
        double level,
        boolean robust,
        int replicates,
        long seed,
        PressureLimit limit) {

    public FitOptions {
        if (!(level >= 0.5 && level <= 0.999) || replicates < 0) {
            throw new IllegalArgumentException("level " + level + ", replicates " + replicates);
        }
    }

    /** {@return proportional weights, effective variance, 95 %, 5,000 replicates} */
    public static FitOptions defaults() {
        return new FitOptions(
                Weighting.PROPORTIONAL,
                PressureErrors.EFFECTIVE_VARIANCE,
                0.95,
                false,
                5_000,
                20_260_101L,
                PressureLimit.UNSTATED);
    }

    /** The same with another weighting. */
    public FitOptions with(Weighting other) {
        return new FitOptions(other, pressureErrors, level, robust, replicates, seed, limit);
    }

    /** The same with another treatment of the pressures' uncertainty. */
    public FitOptions with(PressureErrors other) {
        return new FitOptions(weighting, other, level, robust, replicates, seed, limit);
    }

    /**
     * The same with another confidence.
     *
     * @param other level [1]
     */
    public FitOptions withLevel(double other) {
        return new FitOptions(weighting, pressureErrors, other, robust, replicates, seed, limit);
    }

    /** The same with or without a Huber fit beside the plain one. */
    public FitOptions withRobust(boolean other) {
        return new FitOptions(weighting, pressureErrors, level, other, replicates, seed, limit);
    }

    /**
     * The same with another bootstrap.
     *
     * @param count     of replicates; 0 for none
     * @param otherSeed of its random numbers
     */
    public FitOptions withBootstrap(int count, long otherSeed) {
        return new FitOptions(weighting, pressureErrors, level, robust, count, otherSeed, limit);
    }

    /** The same for a case of another limit. */
    public FitOptions withLimit(PressureLimit other) {
        return new FitOptions(weighting, pressureErrors, level, robust, replicates, seed, other);
    }
}
