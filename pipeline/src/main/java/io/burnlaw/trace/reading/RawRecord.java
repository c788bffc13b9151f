package io.burnlaw.trace.reading;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The columns of a record in the units of the file.
 *
 * @param time         [units of the file, or s where a clock wrote stamps]
 * @param pressure     as long as time, where there is one
 * @param thrust       as long as time, where there is one
 * @param withoutValue rows that were passed over because a reading is missing
 * @param firstWithout line of the first of them
 * @param backwardLine line of the first time stamp that is earlier than the one before it
 * @param notes        what was passed over, as sentences
 */
record RawRecord(
        double[] time,
        Optional<double[]> pressure,
        Optional<double[]> thrust,
        int withoutValue,
        int firstWithout,
        OptionalInt backwardLine,
        List<String> notes) {}
