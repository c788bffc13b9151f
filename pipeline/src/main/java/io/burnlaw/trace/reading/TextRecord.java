package io.burnlaw.trace.reading;

import static io.burnlaw.trace.reading.CellKinds.END;
import static io.burnlaw.trace.reading.CellKinds.KIND;
import static io.burnlaw.trace.reading.CellKinds.ODD;
import static io.burnlaw.trace.reading.CellKinds.PLAIN;
import static io.burnlaw.trace.reading.LineBuffer.endsLine;

import io.burnlaw.trace.reading.CellNumbers.PlainNumber;
import io.burnlaw.trace.reading.RawRecord.Samples;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads a record of text as it streams by: the bytes of each needed cell are parsed where they lie, nothing else is
 * looked at. Memory is the buffer and the columns that are kept.
 */
final class TextRecord {

    private final String file;
    private final LineBuffer lines;
    private final byte[] buffer;
    private final List<String> notes = new ArrayList<>();

    private byte separator;
    private boolean blanks;
    private byte[] kinds = KIND;
    private int[] wanted = new int[0];
    private int last;
    private double[] values = new double[0];
    private CellNumbers numbers;
    private PlainNumber plain;
    /** Index of the column of clock times; -1 where times are plain numbers. */
    private int clockColumn;

    private int missing;
    private int firstMissing;
    private int backwardLine;

    private TextRecord(String file, LineBuffer lines) {
        this.file = file;
        this.lines = lines;
        this.buffer = lines.bytes();
    }

    /** Chooses the columns once the layout is known. */
    @FunctionalInterface
    interface Chooser {
        ColumnChoice choose(RecordLayout layout) throws Refusal;
    }

    /** What was read, and how. */
    record Outcome(RawRecord record, ColumnChoice columns, RecordLayout layout) {}

    /**
     * Reads a record.
     *
     * @throws IOException if the stream fails
     * @throws Refusal     if it is no record
     */
    static Outcome read(String file, InputStream in, Chooser chooser) throws IOException, Refusal {
        return new TextRecord(file, new LineBuffer(file, in)).read(chooser);
    }

    private Outcome read(Chooser chooser) throws IOException, Refusal {
        RecordLayout layout = RecordLayout.of(file, buffer, lines.size());
        ColumnChoice columns = chooser.choose(layout);
        separator = (byte) layout.separator();
        blanks = layout.separator() == Convention.BLANKS;
        kinds = CellKinds.kindsWith(blanks ? " \t" : String.valueOf(layout.separator()));
        wanted = wanted(columns);
        last = Arrays.stream(wanted).max().orElseThrow();
        values = new double[last + 1];
        clockColumn = columns.timeUnit().isEmpty() ? columns.time() : -1;
        numbers = new CellNumbers(file, lines, layout.decimalComma(), clockColumn);
        plain = new PlainNumber((byte) (layout.decimalComma() ? ',' : '.'), kinds);
        lines.goTo(layout.firstByte(), layout.firstLine());
        RawRecord record = rows(columns);
        return new Outcome(record, columns, layout);
    }

    private static int[] wanted(ColumnChoice columns) {
        List<Integer> indices = new ArrayList<>();
        if (columns.time() >= 0) {
            indices.add(columns.time());
        }
        columns.pressure().ifPresent(column -> indices.add(column.index()));
        columns.thrust().ifPresent(column -> indices.add(column.index()));
        return indices.stream().mapToInt(Integer::intValue).distinct().toArray();
    }

    private RawRecord rows(ColumnChoice columns) throws IOException, Refusal {
        int time = columns.time();
        int pressure = columns.pressure().map(ColumnChoice.SourceColumn::index).orElse(-1);
        int thrust = columns.thrust().map(ColumnChoice.SourceColumn::index).orElse(-1);
        Samples times = new Samples();
        Samples pressures = new Samples();
        Samples thrusts = new Samples();
        boolean[] needed = new boolean[last + 1];
        for (int index : wanted) {
            needed[index] = true;
        }
        double before = Double.NEGATIVE_INFINITY;
        int counted = 0;
        while (lines.hasLine()) {
            Row row = row(needed);
            if (row == Row.READ) {
                if (numbers.anyBad()) {
                    throw new Refusal(numbers.bad().orElseThrow());
                }
                double stamp = time < 0 ? counted : values[time];
                if (stamp < before && backwardLine == 0) {
                    backwardLine = lines.line();
                }
                before = stamp;
                counted++;
                times.add(stamp);
                if (pressure >= 0) {
                    pressures.add(values[pressure]);
                }
                if (thrust >= 0) {
                    thrusts.add(values[thrust]);
                }
                if (times.size() > LineBuffer.MOST_SAMPLES) {
                    throw lines.tooMany();
                }
            } else if (row == Row.INCOMPLETE) {
                missing++;
                counted++;
                firstMissing = firstMissing == 0 ? lines.line() : firstMissing;
            }
            lines.next();
        }
        numbers.bad()
                .ifPresent(bad ->
                        notes.add("%s: the text from line %d to the end was ignored.".formatted(file, bad.line())));
        return new RawRecord(
                times.toArray(),
                pressure >= 0 ? Optional.of(pressures.toArray()) : Optional.empty(),
                thrust >= 0 ? Optional.of(thrusts.toArray()) : Optional.empty(),
                missing,
                firstMissing,
                backwardLine == 0 ? OptionalInt.empty() : OptionalInt.of(backwardLine),
                notes);
    }

    private enum Row {
        READ,
        INCOMPLETE,
        NO_ROW
    }

    /** Reads the line that the buffer is at, and goes behind it. */
    private Row row(boolean[] needed) throws Refusal {
        int at = lines.at();
        int first = skipBlanks(at);
        if (endsLine(buffer[first]) || buffer[first] == '#') {
            lines.skipLine(first);
            return Row.NO_ROW;
        }
        boolean complete = true;
        boolean anyNumber = false;
        // Locals: the loop below sees each byte of the record.
        byte[] bytes = buffer;
        byte[] kindOf = kinds;
        int p = blanks ? first : at;
        for (int column = 0; column <= last; column++) {
            int behind = needed[column] && column != clockColumn ? plain.read(bytes, p) : -1;
            if (behind >= 0) {
                values[column] = plain.value();
                anyNumber = true;
                p = behind;
            } else {
                int start = p;
                int seen = PLAIN;
                int kind = kindOf[bytes[p] & 0xFF];
                while (kind < END) {
                    seen |= kind;
                    kind = kindOf[bytes[++p] & 0xFF];
                }
                if ((seen & ODD) != 0 && bytes[skipBlanks(start)] == '"') {
                    p = behindQuotes(start);
                }
                if (needed[column]) {
                    double value = numbers.cell(start, p, seen, column);
                    values[column] = value;
                    complete &= value == value;
                    anyNumber |= value == value;
                }
            }
            if (endsLine(bytes[p])) {
                for (int rest = column + 1; rest <= last; rest++) {
                    complete &= !needed[rest];
                }
                break;
            }
            p = blanks ? skipBlanks(p) : p + 1;
        }
        lines.skipLine(p);
        if (!numbers.endOfRow(anyNumber)) {
            return Row.NO_ROW;
        }
        if (!complete && lines.cutOff()) {
            notes.add("%s: the last line is incomplete and was ignored.".formatted(file));
            return Row.NO_ROW;
        }
        if (numbers.anyBad() && !complete) {
            return Row.NO_ROW;
        }
        return complete ? Row.READ : Row.INCOMPLETE;
    }

    /** The end of a cell in which separators may stand between quotation marks. */
    private int behindQuotes(int start) {
        int p = start;
        boolean open = false;
        while (!endsLine(buffer[p]) && (open || kinds[buffer[p] & 0xFF] < END)) {
            open ^= buffer[p] == '"';
            p++;
        }
        return p;
    }

    private int skipBlanks(int from) {
        int p = from;
        while (buffer[p] == ' ' || buffer[p] == '\t' && separator != '\t') {
            p++;
        }
        return p;
    }
}
