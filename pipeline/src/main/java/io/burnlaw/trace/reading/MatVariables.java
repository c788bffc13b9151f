package io.burnlaw.trace.reading;

import io.burnlaw.trace.reading.MatTag.MatPiece;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The variables of a Matlab file of level 5, one after the other, each as a file of its own that holds it unpacked and
 * whose lengths are true. The library that reads them allocates what a length says, before it looks whether that much
 * is there.
 */
final class MatVariables {

    /** Text, place of the subsystem, version and byte order [1 of {@link MatTag}]. */
    private static final int HEADER = 128;

    private static final int SUBSYSTEM = 116;
    private static final int BYTE_ORDER = 126;

    /** No stream of deflate holds more: two bits give 258 bytes at most (zlib, technical details). */
    private static final long MOST_OF_A_BYTE = 1032;

    private final MatPiece file;
    private final byte[] bytes;
    private final byte[] header;
    private final long subsystem;
    private int at = HEADER;
    private long left = RecordFile.MOST_HELD;

    MatVariables(String path, byte[] bytes) throws Refusal {
        ByteBuffer ordered = ByteBuffer.wrap(bytes);
        this.file = new MatPiece(path, ordered, "");
        this.bytes = bytes;
        if (bytes.length < HEADER) {
            throw file.refusal(bytes.length, "the file ends in its header", bytes.length + " bytes", "128 and more");
        }
        String order = "" + (char) bytes[BYTE_ORDER] + (char) bytes[BYTE_ORDER + 1];
        if (!order.equals("IM") && !order.equals("MI")) {
            throw file.refusal(BYTE_ORDER, "the byte order is not stated", order, "IM or MI");
        }
        ordered.order(order.equals("IM") ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        this.subsystem = ordered.getLong(SUBSYSTEM);
        this.header = Arrays.copyOf(bytes, HEADER);
        Arrays.fill(header, SUBSYSTEM, SUBSYSTEM + Long.BYTES, (byte) 0);
    }

    /** {@return the next variable with the header of the file; empty behind the last} */
    Optional<InputStream> next() throws Refusal {
        while (bytes.length - at >= MatTag.LENGTH) {
            int begin = at;
            MatTag tag = MatTag.read(file, begin, bytes.length);
            at = tag.next();
            // objects of Matlab's own, in no public format
            if (begin != subsystem) {
                return Optional.of(variable(begin, tag));
            }
        }
        return Optional.empty();
    }

    private InputStream variable(int begin, MatTag tag) throws Refusal {
        if (tag.type() == MatTag.MATRIX) {
            MatLengths.check(file, tag);
            return withHeader(new ByteArrayInputStream(bytes, begin, tag.next() - begin));
        }
        if (tag.type() != MatTag.PACKED) {
            throw file.refusal(begin, "no variable begins here", "an element of type " + tag.type(), "type 14 or 15");
        }
        byte[] unpacked = unpacked(tag);
        MatPiece piece = inside(unpacked, begin);
        MatLengths.check(piece, MatTag.read(piece, 0, unpacked.length));
        return withHeader(new ByteArrayInputStream(unpacked));
    }

    private InputStream withHeader(InputStream variable) {
        return new SequenceInputStream(new ByteArrayInputStream(header), variable);
    }

    private MatPiece inside(byte[] unpacked, int begin) {
        return new MatPiece(
                file.file(),
                ByteBuffer.wrap(unpacked).order(file.bytes().order()),
                " of the compressed data at byte " + begin);
    }

    /** The tag first: no more is allocated than it says, and that only if so much can come out. */
    private byte[] unpacked(MatTag packed) throws Refusal {
        int begin = packed.from() - MatTag.LENGTH;
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(bytes, packed.from(), packed.length());
            byte[] tag = new byte[MatTag.LENGTH];
            inflate(inflater, tag, 0, begin);
            MatPiece piece = inside(tag, begin);
            if (piece.bytes().getInt(0) != MatTag.MATRIX) {
                throw piece.refusal(
                        0,
                        "no compressed variable is here",
                        "type " + piece.bytes().getInt(0),
                        "type 14");
            }
            long length = MatTag.LENGTH + Integer.toUnsignedLong(piece.bytes().getInt(Integer.BYTES));
            long most = Math.min(left, packed.length() * MOST_OF_A_BYTE);
            if (length > most) {
                throw piece.refusal(
                        0,
                        "the compressed variable is too long",
                        length + " bytes unpacked",
                        most < left
                                ? "at most %d, which %d packed bytes can hold".formatted(most, packed.length())
                                : "at most %d in one file".formatted(RecordFile.MOST_HELD));
            }
            left -= length;
            byte[] unpacked = Arrays.copyOf(tag, (int) length);
            inflate(inflater, unpacked, MatTag.LENGTH, begin);
            return unpacked;
        } finally {
            inflater.end();
        }
    }

    private void inflate(Inflater inflater, byte[] into, int from, int begin) throws Refusal {
        int filled = from;
        try {
            while (filled < into.length) {
                int more = inflater.inflate(into, filled, into.length - filled);
                if (more == 0) {
                    throw file.refusal(
                            begin, "the compressed data end early", filled + " bytes", into.length + " bytes unpacked");
                }
                filled += more;
            }
        } catch (DataFormatException damaged) {
            throw file.refusal(begin, "the compressed data are damaged", "", "a packed variable");
        }
    }

    /**
     * Whether the elements of a Matlab variable lie in one another as their tags say, and are as many as its dimensions
     * say.
     */
    private static final class MatLengths {

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
                        "variables are nested too deeply",
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
                                variable.from(),
                                "a matrix has no numbers",
                                "type " + numbers.type(),
                                "a type of numbers");
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

        private static void equal(MatPiece piece, MatTag variable, double said, long there, String what)
                throws Refusal {
            if (said != there) {
                throw piece.refusal(
                        variable.from(),
                        "the dimensions of the variable do not fit its content",
                        "%.0f %s by its dimensions".formatted(said, what),
                        there + ", the number in the file");
            }
        }
    }
}
