package io.burnlaw.trace.reading;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.Deflater;

/**
 * Elements of a Matlab file of level 5, byte by byte as MAT-File Format (The MathWorks) lays them out, so that one of
 * them can be wrong.
 */
record MatBytes(ByteOrder order) {

    static final MatBytes LITTLE = new MatBytes(ByteOrder.LITTLE_ENDIAN);

    static final int INT8 = 1;
    static final int INT32 = 5;
    static final int UINT32 = 6;
    static final int DOUBLE = 9;
    static final int MATRIX = 14;
    static final int PACKED = 15;

    static final int CELL = 1;
    static final int STRUCT = 2;
    static final int TEXT = 4;
    static final int DOUBLES = 6;

    byte[] file(byte[]... elements) {
        ByteBuffer header = ByteBuffer.allocate(128).order(order);
        header.put("MATLAB 5.0 MAT-file, invented".getBytes(StandardCharsets.US_ASCII));
        while (header.position() < 116) {
            header.put((byte) ' ');
        }
        header.putLong(0).putShort((short) 0x0100).putShort((short) ('M' << 8 | 'I'));
        return joined(header.array(), joined(elements));
    }

    /** An element whose tag says the truth. */
    byte[] element(int type, byte[] content) {
        return element(type, content.length, content);
    }

    byte[] element(int type, int said, byte[] content) {
        int filled = type == MATRIX || type == PACKED ? content.length : (content.length + 7) / 8 * 8;
        return ByteBuffer.allocate(8 + filled)
                .order(order)
                .putInt(type)
                .putInt(said)
                .put(content)
                .array();
    }

    byte[] variable(int kind, String name, int[] dimensions, byte[]... content) {
        return element(
                MATRIX,
                joined(
                        element(UINT32, ints(kind, 0)),
                        element(INT32, ints(dimensions)),
                        element(INT8, name.getBytes(StandardCharsets.US_ASCII)),
                        joined(content)));
    }

    byte[] column(String name, double... values) {
        ByteBuffer bytes = ByteBuffer.allocate(8 * values.length).order(order);
        for (double value : values) {
            bytes.putDouble(value);
        }
        return variable(DOUBLES, name, new int[] {values.length, 1}, element(DOUBLE, bytes.array()));
    }

    byte[] packed(byte[] variable) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        deflater.setInput(variable);
        deflater.finish();
        byte[] packed = new byte[variable.length + 100];
        int length = deflater.deflate(packed);
        deflater.end();
        return element(PACKED, Arrays.copyOf(packed, length));
    }

    byte[] ints(int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(order);
        for (int value : values) {
            bytes.putInt(value);
        }
        return bytes.array();
    }

    static byte[] joined(byte[]... pieces) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] piece : pieces) {
            all.writeBytes(piece);
        }
        return all.toByteArray();
    }
}
