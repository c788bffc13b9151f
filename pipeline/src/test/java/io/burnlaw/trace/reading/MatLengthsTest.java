package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.trace.Trace;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Matlab files whose lengths and dimensions are not true: said with the place, before anything is allocated. */
class MatLengthsTest {

    private static final MatBytes MAT = MatBytes.LITTLE;
    private static final double[] TIME =
            IntStream.range(0, 64).mapToDouble(i -> i / 1000.0).toArray();
    private static final double[] PRESSURE =
            IntStream.range(0, 64).mapToDouble(i -> 1 + i % 7).toArray();
    private static final byte[] RECORD = MatBytes.joined(MAT.column("t_s", TIME), MAT.column("p_MPa", PRESSURE));

    @TempDir
    Path folder;

    private TraceReading reading(byte[] bytes) throws IOException {
        Files.write(folder.resolve("r.mat"), bytes);
        TraceSettings settings = new TraceSettings(
                Optional.of("t_s [s]"),
                Optional.of("p_MPa [MPa]"),
                Optional.empty(),
                Optional.of(PressureKind.ABSOLUTE),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return TraceReader.read(folder, "7", "r.mat", settings, 101_325);
    }

    private void refused(byte[] bytes, String words) throws IOException {
        String told = reading(bytes)
                .match(
                        read -> "read",
                        unreadable -> unreadable.findings().get(0).message());
        assertThat(told).startsWith("r.mat: ").contains(words).contains("mend it: ");
    }

    private void isRead(byte[] bytes) throws IOException {
        Trace trace = reading(bytes).match(TraceReading.Read::trace, unreadable -> {
            throw new AssertionError(unreadable.findings());
        });
        assertThat(trace.times()).containsExactly(TIME);
        assertThat(trace.pressures())
                .containsExactly(
                        Arrays.stream(PRESSURE).map(value -> value * 1e6).toArray());
    }

    @Test
    void whatIsTrueIsReadInBothOrdersOfBytesPackedOrNot() throws IOException {
        for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
            MatBytes mat = new MatBytes(order);
            byte[] time = mat.column("t_s", TIME);
            byte[] pressure = mat.column("p_MPa", PRESSURE);
            isRead(mat.file(time, pressure));
            isRead(mat.file(mat.packed(time), mat.packed(pressure)));
            isRead(mat.file(mat.packed(time), pressure));
        }
    }

    @Test
    void whatStandsBesideTheRecordIsPassedOver() throws IOException {
        byte[] text = MAT.variable(MatBytes.TEXT, "note", new int[] {1, 3}, MAT.element(16, "abc".getBytes("UTF-8")));
        byte[] blank = MAT.variable(MatBytes.TEXT, "blank", new int[] {1, 3}, MAT.element(16, new byte[0]));
        byte[] cells =
                MAT.variable(MatBytes.CELL, "cells", new int[] {1, 2}, text, MAT.element(MatBytes.MATRIX, new byte[0]));
        byte[] none = MAT.variable(MatBytes.STRUCT, "none", new int[] {1000, 1}, fields(0));
        isRead(MatBytes.joined(MAT.file(text, blank, cells, none), RECORD));
        byte[] nested = text;
        for (int i = 0; i < 50; i++) {
            nested = MAT.variable(MatBytes.CELL, "", new int[] {1, 1}, nested);
        }
        isRead(MatBytes.joined(MAT.file(nested), RECORD));
    }

    @Test
    void aLengthBeyondTheFileIsToldWithItsPlace() throws IOException {
        byte[] whole = MAT.file(RECORD);
        // the first variable's tag is at 128; flags, dimensions and name take 48 bytes behind its own 8
        refused(
                said(whole, 132, 0xC000_0000),
                "byte 128: the element that begins here is longer than its container; "
                        + "found: 3221225472 bytes; expected: at most " + (whole.length - 136));
        refused(
                said(whole, 188, 0x6000_0000),
                "byte 184: the element that begins here is longer than its container; "
                        + "found: 1610612736 bytes; expected: at most 512");
        refused(said(whole, 188, 513), "found: 513 bytes; expected: at most 512");
        refused(Arrays.copyOf(whole, whole.length - 8), "is longer than its container");
        refused(Arrays.copyOf(whole, 100), "byte 100: the file ends in its header");
    }

    @Test
    void aLengthThatNothingPackedCanHaveIsTold() throws IOException {
        byte[] column = MAT.column("t_s", TIME);
        byte[] lie = MAT.packed(said(column, 4, 200 << 20));
        refused(
                MAT.file(lie),
                "byte 0 of the compressed data at byte 128: the compressed variable is too long; "
                        + "found: 209715208 bytes unpacked; expected: at most " + 1032 * (lie.length - 8));
        byte[] small = MAT.packed(said(column, 4, column.length));
        refused(MAT.file(small), "byte 128: the compressed data end early; found: " + column.length);
        // zeros, of which deflate makes a thousandth: what a Matlab file may hold is what it may hold unpacked
        byte[] zeros = new byte[130 << 20];
        byte[] large = MAT.packed(MAT.variable(
                MatBytes.DOUBLES, "z", new int[] {zeros.length / 8, 1}, MAT.element(MatBytes.DOUBLE, zeros)));
        refused(
                MAT.file(large, large),
                "the compressed variable is too long; found: " + ((130 << 20) + 64)
                        + " bytes unpacked; expected: at most 268435456 in one file");
    }

    @Test
    void dimensionsThatTheContentDoesNotHaveAreTold() throws IOException {
        byte[] eight = MAT.element(MatBytes.DOUBLE, new byte[64]);
        byte[] none = MAT.element(MatBytes.DOUBLE, new byte[0]);
        refused(one(MatBytes.DOUBLES, new int[] {9, 1}, eight), "9 numbers by its dimensions; expected: 8");
        // whose product is 0 in 32 bits
        refused(one(MatBytes.DOUBLES, new int[] {1 << 16, 1 << 16}, none), "found: 4294967296 numbers");
        refused(one(MatBytes.DOUBLES, new int[] {-8, -1}, eight), "a dimension is negative; found: -8");
        refused(one(MatBytes.DOUBLES, new int[] {1, 64}, MAT.element(16, new byte[64])), "a matrix has no numbers");
        refused(one(MatBytes.DOUBLES, new int[] {1, 64}), "a matrix has no numbers");
        refused(one(MatBytes.CELL, new int[] {1 << 30, 1}, RECORD), "1073741824 cells by its dimensions; expected: 2");
        refused(
                one(MatBytes.STRUCT, new int[] {1 << 20, 1}, fields(1000), RECORD),
                "1048576000 fields by its dimensions; expected: 2");
        refused(one(MatBytes.TEXT, new int[] {1, 1 << 28}, MAT.element(16, new byte[0])), "268435456 letters");
    }

    @Test
    void variablesThatLieWithoutEndInOneAnotherAreTold() throws IOException {
        byte[] nested = RECORD;
        for (int i = 0; i < 5_000; i++) {
            nested = MAT.element(MatBytes.MATRIX, nested);
        }
        refused(MAT.file(nested), "variables are nested too deeply; found: 101 levels");
        refused(MAT.file(MAT.packed(nested)), "of the compressed data at byte 128: variables are nested too deeply");
    }

    private static byte[] one(int kind, int[] dimensions, byte[]... content) {
        return MatBytes.joined(MAT.file(MAT.variable(kind, "x", dimensions, content)), RECORD);
    }

    /** Names of four letters each. */
    private static byte[] fields(int count) {
        return MatBytes.joined(
                MAT.element(MatBytes.INT32, MAT.ints(4)), MAT.element(MatBytes.INT8, new byte[4 * count]));
    }

    private static byte[] said(byte[] bytes, int at, int length) {
        byte[] lie = bytes.clone();
        System.arraycopy(MAT.ints(length), 0, lie, at, 4);
        return lie;
    }
}
