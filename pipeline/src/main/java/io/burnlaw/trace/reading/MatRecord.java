package io.burnlaw.trace.reading;

import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.trace.reading.RawRecord.Samples;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import us.hebi.matlab.mat.format.BufferAllocator;
import us.hebi.matlab.mat.format.Mat5;
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

    private static final int MOST_COLUMNS = 1000;

    /** The library's own takes memory that the collector of garbage does not see. */
    private static final BufferAllocator ON_HEAP = new BufferAllocator() {
        @Override
        public ByteBuffer allocate(int size) {
            return ByteBuffer.allocate(size);
        }

        @Override
        public void release(ByteBuffer buffer) {
            // collected with the record
        }
    };

    private MatRecord() {}

    /** A variable, or a column of one. */
    private record MatColumn(TraceHeading heading, Matrix matrix, int from, int length) {

        double at(int i) {
            return matrix.getDouble(from + i);
        }
    }

    static TraceReader.Decoded read(String file, byte[] bytes, TraceSettings settings) throws Refusal {
        List<MatColumn> columns = new ArrayList<>();
        for (MatFile.Entry entry : entries(file, bytes)) {
            collect(entry.getName(), entry.getValue(), columns);
        }
        if (columns.size() > MOST_COLUMNS || columns.stream().noneMatch(column -> column.length() > 1)) {
            throw Refusal.of(
                    file,
                    0,
                    "the file has no vectors of numbers",
                    "a time and a pressure, each in a variable of its own or as the columns of a matrix",
                    "save them as such, or export text");
        }
        List<TraceHeading> headings = columns.stream().map(MatColumn::heading).toList();
        ColumnChoice choice = ColumnChoice.of(file, 0, headings, List.of(), settings);
        List<String> notes = new ArrayList<>(choice.notes());
        return new TraceReader.Decoded(raw(file, columns, choice, notes), choice, notes);
    }

    private static List<MatFile.Entry> entries(String file, byte[] bytes) throws Refusal {
        List<MatFile.Entry> entries = new ArrayList<>();
        try {
            MatVariables variables = new MatVariables(file, bytes);
            for (Optional<InputStream> each = variables.next(); each.isPresent(); each = variables.next()) {
                Mat5.newReader(Sources.wrapInputStream(each.get()))
                        .disableSubsystemProcessing()
                        .setBufferAllocator(ON_HEAP)
                        .readMat()
                        .getEntries()
                        .forEach(entries::add);
            }
        } catch (IOException e) {
            throw Refusal.of(
                    file,
                    0,
                    "this is not a Matlab file of level 5, or it is damaged",
                    "a file saved with -v6 or -v7",
                    "save it again with   save('name.mat', '-v7')   or export text");
        } catch (OutOfMemoryError e) {
            // Lengths are true here, but a quarter of a megabyte can truly hold a quarter of a gigabyte when packed:
            // where
            // Java was given less, that record is lost and not the campaign.
            throw Refusal.of(
                    file,
                    0,
                    "the record takes more memory than there is",
                    "at most " + (Runtime.getRuntime().maxMemory() >> 20) + " MB in all",
                    "save the channels of this firing only, or allow more with the option -Xmx2g before -jar");
        }
        return entries;
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
        Optional<MatColumn> pressure = choice.pressure().map(column -> columns.get(column.index()));
        Optional<MatColumn> thrust = choice.thrust().map(column -> columns.get(column.index()));
        MatColumn time = choice.time() >= 0
                ? columns.get(choice.time())
                : pressure.or(() -> thrust).orElseThrow();
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
            double t = choice.time() >= 0 ? time.at(i) : i;
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
