package io.burnlaw.trace.reading;

import java.util.Arrays;

/** What the bytes of a cell may be, looked up one by one while the cell is scanned. */
final class CellKinds {

    /** Of a plain number. */
    static final int PLAIN = 0;

    static final int COMMA = 1;
    static final int BLANK = 2;
    static final int ODD = 4;
    /** Behind the cell. */
    static final int END = 8;

    /** By byte, where no separator is known. */
    static final byte[] KIND = kinds();

    private CellKinds() {}

    /**
     * The kinds by byte, with separators.
     *
     * @param separators that end a cell beside the ends of lines
     * @return kind of each of the 256 bytes
     */
    static byte[] kindsWith(String separators) {
        byte[] kinds = KIND.clone();
        for (char c : (separators + "\r\n").toCharArray()) {
            kinds[c] = END;
        }
        return kinds;
    }

    private static byte[] kinds() {
        byte[] kinds = new byte[256];
        Arrays.fill(kinds, (byte) ODD);
        for (char c : "0123456789+-.eE".toCharArray()) {
            kinds[c] = PLAIN;
        }
        kinds[','] = COMMA;
        kinds[' '] = BLANK;
        kinds['\t'] = BLANK;
        return kinds;
    }
}
