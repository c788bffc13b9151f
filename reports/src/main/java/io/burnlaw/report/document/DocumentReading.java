package io.burnlaw.report.document;

import io.burnlaw.report.document.Characterization.Input;
import java.util.function.Function;

/** Result of reading a published document: the document, or why the file is not one. */
public sealed interface DocumentReading {

    /**
     * The file is a document of this format.
     *
     * @param document what it holds
     * @param file path, size and checksum of the file that was read
     */
    record Read(Characterization document, Input file) implements DocumentReading {}

    /**
     * This version cannot read the file.
     *
     * @param place file, and line and column where known
     * @param what is wrong, a few words
     * @param found in the file
     * @param expected instead
     * @param mend what to do
     */
    record Refused(String place, String what, String found, String expected, String mend) implements DocumentReading {

        /** {@return the message as it is printed} */
        public String text() {
            return place + ": " + what + "\n    found      " + found + "\n    expected   " + expected
                    + "\n    mend it    " + mend;
        }
    }

    /**
     * Answers for both cases.
     *
     * @param read    for a document
     * @param refused for a refusal
     * @param <T>     of the answer
     * @return the answer
     */
    default <T> T match(Function<Read, T> read, Function<Refused, T> refused) {
        return this instanceof Read r ? read.apply(r) : refused.apply((Refused) this);
    }
}
