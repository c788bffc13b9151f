package io.burnlaw.trace.reading;

import java.io.IOException;
import java.io.InputStream;

/** The lines of a text as it streams by: a buffer of whole lines, and where in it the reading is. */
final class LineBuffer {

    /** Longest line that is read; longer ones are no record. */
    static final int BUFFER = 1 << 18;

    /** More samples than these are no firing. */
    static final int MOST_SAMPLES = 10_000_000;

    /** More bytes than these are not unpacked, however small the packed file is. */
    private static final long MOST_BYTES = 2L << 30;

    private final String file;
    private final InputStream in;
    /** One byte longer than it is filled: a line end behind the last line spares every other check. */
    private final byte[] buffer = new byte[BUFFER + 1];

    private int size;
    /** Behind the last whole line of the buffer. */
    private int limit;

    private int at;
    private int line;
    private long total;
    private boolean ended;

    /**
     * Begins with the first lines of a text.
     *
     * @throws IOException if the stream fails
     * @throws Refusal     if it is empty, not text, or has no line ends
     */
    LineBuffer(String file, InputStream in) throws IOException, Refusal {
        this.file = file;
        this.in = in;
        fill();
        if (size == 0) {
            throw Refusal.of(file, 0, "the file is empty", "a record", "export the record again");
        }
        refuseBinary();
    }

    /** {@return the bytes themselves, which change with every line that is asked for} */
    byte[] bytes() {
        return buffer;
    }

    /** {@return how many of the bytes are filled} */
    int size() {
        return size;
    }

    /** {@return where the line begins} */
    int at() {
        return at;
    }

    /** {@return its number, from 1} */
    int line() {
        return line;
    }

    /** Goes to a line that lies in the buffer. */
    void goTo(int place, int number) {
        at = place;
        line = number;
    }

    /** Counts a line that was read. */
    void next() {
        line++;
    }

    /** {@return whether the last line was just read, and had no end} */
    boolean cutOff() {
        return ended && at >= limit && !endsLine(buffer[limit - 1]);
    }

    static boolean endsLine(byte b) {
        return b == '\n' || b == '\r';
    }

    /** Goes behind the line that a place lies in. */
    void skipLine(int from) {
        int p = from;
        while (!endsLine(buffer[p])) {
            p++;
        }
        p += buffer[p] == '\r' && p + 1 < limit && buffer[p + 1] == '\n' ? 2 : 1;
        at = Math.min(p, limit);
    }

    /** Whether a whole line lies at {@link #at}; reads on where it does not. */
    boolean hasLine() throws IOException, Refusal {
        while (at >= limit) {
            if (ended) {
                limit = size;
                buffer[size] = '\n';
                return at < size;
            }
            System.arraycopy(buffer, at, buffer, 0, size - at);
            size -= at;
            at = 0;
            fill();
        }
        return true;
    }

    /** Fills the buffer and finds the end of its last whole line. */
    private void fill() throws IOException, Refusal {
        if (size == BUFFER) {
            throw Refusal.of(
                    file,
                    line,
                    "the line is longer than " + BUFFER + " bytes",
                    "one row of readings on each line",
                    "export the record again, one row on each line");
        }
        while (size < BUFFER) {
            int read = in.read(buffer, size, BUFFER - size);
            if (read < 0) {
                ended = true;
                break;
            }
            size += read;
            total += read;
        }
        if (total > MOST_BYTES) {
            throw tooMany();
        }
        int end = ended ? size : size - 1;
        while (end > 0 && buffer[end - 1] != '\n' && buffer[end - 1] != '\r') {
            end--;
        }
        limit = end;
    }

    Refusal tooMany() {
        return Refusal.of(
                file,
                line,
                "the record is too large",
                "at most %d samples and %d bytes".formatted(MOST_SAMPLES, MOST_BYTES),
                "cut it to the firing, or keep every tenth sample");
    }

    Refusal binary() {
        return Refusal.of(
                file,
                line,
                "this is not text: there are NUL bytes in it",
                "a heading row and rows of numbers",
                "export the record as text");
    }

    private void refuseBinary() throws Refusal {
        for (int i = 0; i < size; i++) {
            if (buffer[i] == 0) {
                throw binary();
            }
        }
    }
}
