package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Quantity;
import java.util.Optional;
import java.util.OptionalDouble;

/** The time from one sample to the next, written as a rate or as a time: {@code 2 kHz}, {@code 0.5 ms}. */
final class SamplingInterval {

    private SamplingInterval() {}

    /**
     * The interval, or what is wrong.
     *
     * @param interval [s]
     */
    record Reading(OptionalDouble interval, Optional<String> fault) {

        static final String EXPECTED = "a rate such as 2 kHz, or the time between two samples such as 0.5 ms";
    }

    static Reading read(String text) {
        OptionalDouble rate = value(text, Dimension.FREQUENCY);
        OptionalDouble interval =
                rate.isPresent() ? OptionalDouble.of(1 / rate.getAsDouble()) : value(text, Dimension.TIME);
        if (interval.isEmpty()) {
            return wrong("this is neither a sampling rate nor an interval");
        }
        return Plausible.SAMPLING_INTERVAL
                .doubt(interval.getAsDouble())
                .map(SamplingInterval::wrong)
                .orElseGet(() -> new Reading(interval, Optional.empty()));
    }

    private static OptionalDouble value(String text, Dimension dimension) {
        return Quantity.read(text, dimension)
                .match(read -> OptionalDouble.of(read.quantity().si().value()), misread -> OptionalDouble.empty());
    }

    private static Reading wrong(String what) {
        return new Reading(OptionalDouble.empty(), Optional.of(what));
    }
}
