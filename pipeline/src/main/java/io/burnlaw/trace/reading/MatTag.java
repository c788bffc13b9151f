package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Problem;
import java.nio.ByteBuffer;

/**
 * What stands before each element of a Matlab file of level 5 [1]: its type, and where its content lies. It is read only
 * if the bytes that it promises are there.
 *
 * <p>[1] MAT-File Format, The MathWorks, section "Data Element Format".
 *
 * @param type number of the type
 * @param from where the content begins
 * @param to   behind its last byte
 * @param next behind what fills it up to eight bytes
 */
record MatTag(int type, int from, int to, int next) {

    /** A variable; its content is elements. */
    static final int MATRIX = 14;

    /** A packed variable. */
    static final int PACKED = 15;

    /** Bytes of a tag. */
    static final int LENGTH = 8;

    /** Bytes of one value by type; 0 for what is no number. */
    private static final int[] SIZES = {0, 1, 1, 2, 2, 4, 4, 4, 0, 8, 0, 0, 8, 8};

    /** Content that is written into the tag itself. */
    private static final int MOST_SHORT = 4;

    /**
     * The tag at a place.
     *
     * @param end nothing beyond belongs to what the element lies in
     */
    static MatTag read(MatPiece piece, int at, int end) throws Refusal {
        int left = end - at - LENGTH;
        if (left < 0) {
            throw piece.refusal(at, "no element begins here", end - at + " bytes", "a tag of 8 bytes");
        }
        int first = piece.bytes().getInt(at);
        int ofShort = first >>> 16;
        if (ofShort > MOST_SHORT) {
            throw piece.refusal(at, "no element begins here", "a short one of " + ofShort + " bytes", "at most 4");
        }
        if (ofShort > 0) {
            int from = at + LENGTH - MOST_SHORT;
            return new MatTag(first & 0xFFFF, from, from + ofShort, at + LENGTH);
        }
        long length = Integer.toUnsignedLong(piece.bytes().getInt(at + MOST_SHORT));
        long filled = first == MATRIX || first == PACKED ? length : (length + LENGTH - 1) / LENGTH * LENGTH;
        if (filled > left) {
            throw piece.refusal(
                    at,
                    "the element that begins here is longer than its container",
                    length + " bytes",
                    "at most " + left);
        }
        int from = at + LENGTH;
        return new MatTag(first, from, from + (int) length, from + (int) filled);
    }

    int length() {
        return to - from;
    }

    /** {@return bytes of one number, or 0 where the content is not of numbers} */
    int size() {
        return type < SIZES.length ? SIZES[type] : 0;
    }

    /**
     * Bytes in which elements of a Matlab file lie: the file itself, or what was packed in one place of it.
     *
     * @param file   path as the user knows it
     * @param bytes  in the byte order of the file
     * @param within what is said behind a place; empty text for the file itself
     */
    record MatPiece(String file, ByteBuffer bytes, String within) {

        Refusal refusal(int at, String what, String found, String expected) {
            return new Refusal(new Problem(
                    file,
                    0,
                    "byte " + at + within,
                    what,
                    found,
                    expected,
                    "copy the file again, or save it again with   save('name.mat', '-v7')   or export text"));
        }
    }
}
