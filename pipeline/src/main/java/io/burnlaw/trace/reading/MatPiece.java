package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Problem;
import java.nio.ByteBuffer;

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
