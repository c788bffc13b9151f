package io.burnlaw.trace;

import io.burnlaw.campaign.TraceSettings;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import us.hebi.matlab.mat.format.Mat5;
import us.hebi.matlab.mat.format.Mat5File;
import us.hebi.matlab.mat.types.Array;
import us.hebi.matlab.mat.types.MatFile;
import us.hebi.matlab.mat.types.Matrix;
import us.hebi.matlab.mat.types.Sources;
import us.hebi.matlab.mat.types.Struct;

/**
 * Reads a Matlab file of level 5 (.mat, as saved by -v6 and -v7): every real vector of numbers is a column that is
 * called as its variable, or as its structure and field; a matrix gives one column for each of its own,
 * {@code data column 2}.
 */
final class MatRecord {

    /** Unpacked, all variables together are never larger. */
    private static final int MOST_UNPACKED = 512 << 20;

    private static final int MOST_COLUMNS = 1000;

    private MatRecord() {}

    /** A variable, or a column of one. */
    private record MatColumn(TraceHeading heading, Matrix matrix, int from, int length) {

        double at(int i) {
            return matrix.getDouble(from + i);
        }
    }

    static TraceReader.Decoded read(String file, byte[] bytes, TraceSettings settings) throws Refusal {
        List<MatColumn> columns = new ArrayList<>();
        for (MatFile.Entry entry : opened(file, bytes).getEntries()) {
            collect(entry.getName(), entry.getValue(), columns);
        }
        if (columns.size() > MOST_COLUMNS || columns.stream().noneMatch(column -> column.length() > 1)) {
            throw Refusal.of(
                    file,
                    0,
                    "there are no vectors of numbers in it",
                    "a time and a pressure, each in a variable of its own or as the columns of a matrix",
                    "save them as such, or export text");
        }
        List<TraceHeading> headings = columns.stream().map(MatColumn::heading).toList();
        ColumnChoice choice = ColumnChoice.of(file, 0, headings, List.of(), settings);
        List<String> notes = new ArrayList<>(choice.notes());
        return new TraceReader.Decoded(raw(file, columns, choice, notes), choice, notes);
    }

    /** The budget holds for all that the file unpacks to: a small file can hold a very large one. */
    private static Mat5File opened(String file, byte[] bytes) throws Refusal {
        long[] left = {MOST_UNPACKED};
        try {
            return Mat5.newReader(Sources.wrap(bytes))
                    .disableSubsystemProcessing()
                    .setBufferAllocator(new us.hebi.matlab.mat.format.BufferAllocator() {
                        @Override
                        public ByteBuffer allocate(int size) {
                            left[0] -= size;
                            if (size < 0 || left[0] < 0) {
                                throw new IllegalStateException("too large");
                            }
                            return ByteBuffer.allocate(size);
                        }

                        @Override
                        public void release(ByteBuffer buffer) {
                            // kept until the file is done
                        }
                    })
                    .readMat();
        } catch (IOException
                | IllegalStateException
                | IllegalArgumentException
                | BufferUnderflowException
                | IndexOutOfBoundsException
                | NegativeArraySizeException
                | ArithmeticException
                | OutOfMemoryError e) {
            // The library asks for as much at once as a length in the file says; nothing else is lost where that fails.
            throw Refusal.of(
                    file,
                    0,
                    "this is no Matlab file of level 5, or it is damaged or too large",
                    "a file saved with -v6 or -v7",
                    "save it again with   save('name.mat', '-v7')   or export text");
        }
    }

    private static void collect(String name, Array value, List<MatColumn> columns) {
        if (columns.size() > MOST_COLUMNS) {
            return;
        }
        if (value instanceof Matrix matrix && !matrix.isComplex() && matrix.getNumDimensions() == 2) {
            int rows = matrix.getNumRows();
            int width = matrix.getNumCols();
            if (Math.min(rows, width) == 1) {
                columns.add(new MatColumn(TraceHeading.of(name), matrix, 0, Math.max(rows, width)));
                return;
            }
            for (int i = 0; i < Math.min(width, MOST_COLUMNS); i++) {
                columns.add(new MatColumn(TraceHeading.of(name + " column " + (i + 1)), matrix, i * rows, rows));
            }
        }
        if (value instanceof Struct struct && struct.getNumElements() == 1) {
            for (String field : struct.getFieldNames()) {
                collect(name + "." + field, struct.get(field), columns);
            }
        }
    }

    private static RawRecord raw(String file, List<MatColumn> columns, ColumnChoice choice, List<String> notes)
            throws Refusal {
        MatColumn time = columns.get(choice.time());
        Optional<MatColumn> pressure = choice.pressure().map(column -> columns.get(column.index()));
        Optional<MatColumn> thrust = choice.thrust().map(column -> columns.get(column.index()));
        boolean equal = pressure.filter(column -> column.length() != time.length())
                        .isEmpty()
                && thrust.filter(column -> column.length() != time.length()).isEmpty();
        if (!equal || time.length() > LineBuffer.MOST_SAMPLES) {
            throw Refusal.of(
                    file,
                    0,
                    "the columns differ in length, or are longer than " + LineBuffer.MOST_SAMPLES,
                    time.length() + " values in each, as in " + time.heading().written(),
                    "save the channels of one record only");
        }
        Samples times = new Samples();
        Samples pressures = new Samples();
        Samples thrusts = new Samples();
        int missing = 0;
        int first = 0;
        for (int i = 0; i < time.length(); i++) {
            double t = time.at(i);
            double p = pressure.isPresent() ? pressure.get().at(i) : 0;
            double f = thrust.isPresent() ? thrust.get().at(i) : 0;
            if (!Double.isFinite(t) || !Double.isFinite(p) || !Double.isFinite(f)) {
                first = missing++ == 0 ? i + 1 : first;
                continue;
            }
            times.add(t);
            pressures.add(p);
            thrusts.add(f);
        }
        return new RawRecord(
                times.toArray(),
                pressure.map(column -> pressures.toArray()),
                thrust.map(column -> thrusts.toArray()),
                missing,
                first,
                OptionalInt.empty(),
                notes);
    }
}
