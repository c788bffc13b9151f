package io.burnlaw.trace.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether the elements of a Matlab variable lie in one another as their tags say, and are as many as its dimensions say.
 */
final class MatLengths {

    /** Variables within variables; each level costs a piece of the stack. */
    private static final int MOST_NESTED = 100;

    /** A text without content is taken as blanks, one for each of its places. */
    private static final int MOST_BLANKS = 1 << 16;

    private static final int OPAQUE = 17;

    /** The elements before the content of a variable: flags, dimensions, name. */
    private static final int HEAD = 3;

    /** No variable tells more about itself before its content. */
    private static final int MOST_PARTS = HEAD + 3;

    private MatLengths() {}

    static void check(MatPiece piece, MatTag variable) throws Refusal {
        check(piece, variable, 1);
    }

    private static void check(MatPiece piece, MatTag variable, int depth) throws Refusal {
        if (depth > MOST_NESTED) {
            throw piece.refusal(
                    variable.from(),
                    "variables lie too deep in one another",
                    depth + " levels",
                    "at most " + MOST_NESTED);
        }
        List<MatTag> parts = new ArrayList<>(MOST_PARTS);
        long nested = 0;
        for (int at = variable.from(); at < variable.to(); ) {
            MatTag part = MatTag.read(piece, at, variable.to());
            if (part.type() == MatTag.MATRIX) {
                check(piece, part, depth + 1);
                nested++;
            } else if (parts.size() < MOST_PARTS) {
                parts.add(part);
            }
            at = part.next();
        }
        // what is not there allocates nothing: the library will miss it
        if (parts.size() >= HEAD && parts.get(0).length() >= Integer.BYTES) {
            int kind = piece.bytes().getInt(parts.get(0).from()) & 0xFF;
            if (kind != OPAQUE) {
                content(piece, variable, kind, parts, nested);
            }
        }
    }

    private static void content(MatPiece piece, MatTag variable, int kind, List<MatTag> parts, long nested)
            throws Refusal {
        double elements = elements(piece, parts.get(1));
        switch (kind) {
            case 1 -> equal(piece, variable, elements, nested, "cells");
            case 2 -> equal(piece, variable, elements * fields(piece, parts, HEAD), nested, "fields");
            case 3 -> equal(piece, variable, elements * fields(piece, parts, HEAD + 1), nested, "fields");
            case 4 -> {
                if (elements > MOST_BLANKS
                        && parts.size() > HEAD
                        && parts.get(HEAD).length() == 0) {
                    equal(piece, variable, elements, 0, "letters");
                }
            }
            case 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 -> {
                MatTag numbers = parts.size() > HEAD ? parts.get(HEAD) : parts.get(0);
                if (parts.size() == HEAD || numbers.size() == 0 || nested > 0) {
                    throw piece.refusal(
                            variable.from(), "a matrix has no numbers", "type " + numbers.type(), "a type of numbers");
                }
                equal(piece, variable, elements, numbers.length() / numbers.size(), "numbers");
            }
            default -> {
                // texts, sparse matrices and functions: nothing is allocated by their dimensions
            }
        }
    }

    /** A double holds each product exactly that a file could match. */
    private static double elements(MatPiece piece, MatTag dimensions) throws Refusal {
        double product = 1;
        for (int at = dimensions.from(); at + Integer.BYTES <= dimensions.to(); at += Integer.BYTES) {
            int dimension = piece.bytes().getInt(at);
            if (dimension < 0) {
                throw piece.refusal(at, "a dimension is negative", Integer.toString(dimension), "0 or more");
            }
            product *= dimension;
        }
        return product;
    }

    /** The names of the fields stand one after the other, each of the same length. */
    private static int fields(MatPiece piece, List<MatTag> parts, int from) {
        if (parts.size() < from + 2 || parts.get(from).length() < Integer.BYTES) {
            return 0;
        }
        int length = piece.bytes().getInt(parts.get(from).from());
        return length > 0 ? parts.get(from + 1).length() / length : 0;
    }

    private static void equal(MatPiece piece, MatTag variable, double said, long there, String what) throws Refusal {
        if (said != there) {
            throw piece.refusal(
                    variable.from(),
                    "the dimensions of the variable do not fit its content",
                    "%.0f %s by its dimensions".formatted(said, what),
                    there + ", as many as are there");
        }
    }
}
