package io.burnlaw.quantity;

import java.util.function.Function;

/** What reading a quantity gave: the quantity, or why there is none. */
public sealed interface QuantityReading {

    /**
     * It was read.
     *
     * @param quantity as written
     */
    record Read(Quantity quantity) implements QuantityReading {}

    /**
     * It could not be read.
     *
     * @param what     what is wrong, in a few words
     * @param expected what should stand there
     * @param mend     what to write
     */
    record Misread(String what, String expected, String mend) implements QuantityReading {}

    /**
     * Answers for both cases.
     *
     * @param read    the answer where it was read
     * @param misread the answer where it was not
     * @param <T>     of the answer
     * @return the answer
     */
    default <T> T match(Function<Read, T> read, Function<Misread, T> misread) {
        return this instanceof Read r ? read.apply(r) : misread.apply((Misread) this);
    }
}
