package io.burnlaw.trace.reading;

import java.util.ArrayList;
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
        List<String> notes) {

    /** A column of numbers that grows by blocks, so that nothing is copied until it is complete. */
    static final class Samples {

        private static final int BLOCK = 1 << 14;

        private final List<double[]> blocks = new ArrayList<>();
        private double[] block = new double[BLOCK];
        private int used;

        void add(double value) {
            if (used == BLOCK) {
                blocks.add(block);
                block = new double[BLOCK];
                used = 0;
            }
            block[used++] = value;
        }

        int size() {
            return blocks.size() * BLOCK + used;
        }

        double[] toArray() {
            double[] all = new double[size()];
            for (int i = 0; i < blocks.size(); i++) {
                System.arraycopy(blocks.get(i), 0, all, i * BLOCK, BLOCK);
            }
            System.arraycopy(block, 0, all, blocks.size() * BLOCK, used);
            return all;
        }
    }
}
