package io.burnlaw.trace;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads a record of text as it streams by: the bytes of each needed cell are parsed where they lie, nothing else is
 * looked at. Memory is the buffer and the columns that are kept.
 */
final class TextRecord {

    /** Longest line that is read; longer ones are no record. */
    static final int BUFFER = 1 << 18;

    /** More samples than these are no firing. */
    static final int MOST_SAMPLES = 10_000_000;

    /** More bytes than these are not unpacked, however small the packed file is. */
    private static final long MOST_BYTES = 2L << 30;

    /** So many lines of text after the last numbers are a footer. */
    private static final int LONGEST_FOOTER = 100;

    private static final int PLAIN = 0;
    private static final int COMMA = 1;
    private static final int BLANK = 2;
    private static final int ODD = 4;
    /** Behind the cell. */
    private static final int END = 8;

    private static final byte[] KIND = kinds();

    private final String file;
    private final InputStream in;
    /** One byte longer than it is filled: a line end behind the last line spares every other check. */
    private final byte[] buffer = new byte[BUFFER + 1];

    private int size;
    /** Behind the last whole line of the buffer. */
    private int limit;

    private int at;
    private int line;
    private long total;
    private boolean ended;

    private byte separator;
    private boolean blanks;
    private byte[] kindOf = KIND;
    private boolean quoted;
    private boolean decimalComma;
    private int[] wanted = new int[0];
    private int last;
    private double[] values = new double[0];
    private ClockTime clock = new ClockTime();
    private boolean stamps;

    private final List<String> notes = new ArrayList<>();
    private int missing;
    private int firstMissing;
    private int backwardLine;
    private Problem bad;
    private int badLines;

    private TextRecord(String file, InputStream in) {
        this.file = file;
        this.in = in;
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
     * @param file    for messages
     * @param in      its text, unpacked
     * @param chooser of the columns
     * @return the columns
     * @throws IOException if the stream fails
     * @throws Refusal     if it is no record
     */
    static Outcome read(String file, InputStream in, Chooser chooser) throws IOException, Refusal {
        return new TextRecord(file, in).read(chooser);
    }

    private Outcome read(Chooser chooser) throws IOException, Refusal {
        fill();
        if (size == 0) {
            throw Refusal.of(file, 0, "the file is empty", "a record", "export the record again");
        }
        refuseBinary();
        RecordLayout layout = RecordLayout.of(file, buffer, size);
        ColumnChoice columns = chooser.choose(layout);
        separator = (byte) layout.separator();
        blanks = layout.separator() == RecordLayout.BLANKS;
        kindOf = kindsWith(blanks ? " \t" : String.valueOf(layout.separator()));
        quoted = layout.quoted();
        decimalComma = layout.decimalComma();
        stamps = columns.timeUnit().isEmpty();
        wanted = wanted(columns);
        last = Arrays.stream(wanted).max().orElseThrow();
        values = new double[last + 1];
        at = layout.firstByte();
        line = layout.firstLine();
        RawRecord record = rows(columns);
        return new Outcome(record, columns, layout);
    }

    private static int[] wanted(ColumnChoice columns) {
        List<Integer> indices = new ArrayList<>(List.of(columns.time()));
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
        while (hasLine()) {
            Row row = row(needed);
            if (row == Row.READ) {
                if (bad != null) {
                    throw new Refusal(bad);
                }
                if (values[time] < before && backwardLine == 0) {
                    backwardLine = line;
                }
                before = values[time];
                times.add(values[time]);
                if (pressure >= 0) {
                    pressures.add(values[pressure]);
                }
                if (thrust >= 0) {
                    thrusts.add(values[thrust]);
                }
                if (times.size() > MOST_SAMPLES) {
                    throw tooMany();
                }
            } else if (row == Row.INCOMPLETE) {
                missing++;
                firstMissing = firstMissing == 0 ? line : firstMissing;
            }
            line++;
        }
        if (bad != null) {
            notes.add("%s: the text from line %d to the end was passed over.".formatted(file, bad.line()));
        }
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

    /** Reads the line at {@link #at} and goes behind it. */
    private Row row(boolean[] needed) throws Refusal {
        int first = skipBlanks(at);
        if (endsLine(buffer[first]) || buffer[first] == '#') {
            skipLine(first);
            return Row.NO_ROW;
        }
        boolean complete = true;
        int p = blanks ? first : at;
        for (int column = 0; column <= last; column++) {
            int start = p;
            int kinds = PLAIN;
            int kind = kindOf[buffer[p] & 0xFF];
            while (kind < END) {
                kinds |= kind;
                kind = kindOf[buffer[++p] & 0xFF];
            }
            if (quoted && (kinds & ODD) != 0) {
                kinds |= ODD;
                p = behindQuotes(start);
            }
            if (needed[column]) {
                double value = cell(start, p, kinds, column);
                values[column] = value;
                complete &= value == value;
            }
            if (endsLine(buffer[p])) {
                for (int rest = column + 1; rest <= last; rest++) {
                    complete &= !needed[rest];
                }
                break;
            }
            p = blanks ? skipBlanks(p) : p + 1;
        }
        boolean wasBad = bad != null && bad.line() == line;
        skipLine(p);
        boolean cutOff = !complete && ended && at >= limit && !endsLine(buffer[limit - 1]);
        if (cutOff && !wasBad) {
            notes.add("%s: the last line is incomplete and was passed over.".formatted(file));
            return Row.NO_ROW;
        }
        if (wasBad || badLines > 0 && !complete) {
            return Row.NO_ROW;
        }
        return complete ? Row.READ : Row.INCOMPLETE;
    }

    /** The end of a cell in which separators may stand between quotation marks. */
    private int behindQuotes(int start) {
        int p = start;
        boolean open = false;
        while (!endsLine(buffer[p]) && (open || kindOf[buffer[p] & 0xFF] < END)) {
            open ^= buffer[p] == '"';
            p++;
        }
        return p;
    }

    private static boolean endsLine(byte b) {
        return b == '\n' || b == '\r';
    }

    /** The number in a cell, or NaN where there is no reading. */
    private double cell(int start, int end, int kinds, int column) throws Refusal {
        if (stamps && column == wanted[0]) {
            return stamp(start, end, column);
        }
        int from = start;
        int to = end;
        if ((kinds & (BLANK | ODD)) != 0) {
            while (from < to && KIND[buffer[from] & 0xFF] == BLANK) {
                from++;
            }
            while (to > from && KIND[buffer[to - 1] & 0xFF] == BLANK) {
                to--;
            }
        }
        if (from == to) {
            return Double.NaN;
        }
        if ((kinds & ODD) != 0) {
            return odd(from, to, column);
        }
        if ((kinds & COMMA) != 0) {
            if (!decimalComma) {
                return odd(from, to, column);
            }
            for (int i = from; i < to; i++) {
                if (buffer[i] == ',') {
                    buffer[i] = '.';
                }
            }
        }
        try {
            double value = JavaDoubleParser.parseDouble(buffer, from, to - from);
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException e) {
            return odd(from, to, column);
        }
    }

    /** What is neither a plain number nor empty: quoted, a word for "no reading", or not a record at all. */
    private double odd(int from, int to, int column) throws Refusal {
        String text = text(from, to);
        if (text.indexOf('\0') >= 0) {
            throw binary();
        }
        String cell = CellText.unquoted(text);
        if (CellText.isMissing(cell)) {
            return Double.NaN;
        }
        String point = decimalComma ? cell.replace(',', '.') : cell;
        if (CellText.isNumber(point, false)) {
            double value = Double.parseDouble(point);
            return Double.isFinite(value) ? value : Double.NaN;
        }
        noNumber(cell, column, "a number");
        return Double.NaN;
    }

    private double stamp(int from, int to, int column) throws Refusal {
        String cell = CellText.unquoted(text(from, to));
        if (CellText.isMissing(cell)) {
            return Double.NaN;
        }
        OptionalDouble seconds = clock.seconds(cell);
        if (seconds.isEmpty()) {
            noNumber(cell, column, "a time such as 12:03:04.567");
        }
        return seconds.orElse(Double.NaN);
    }

    /** Text after the last numbers is a footer, so it is an error only if numbers follow. */
    private void noNumber(String cell, int column, String expected) throws Refusal {
        badLines++;
        if (bad == null) {
            bad = new Problem(
                    file,
                    line,
                    "column " + (column + 1),
                    "the cell is not a number",
                    Excerpt.of(cell),
                    expected,
                    "correct the cell, or cut the file if a second record begins here");
        }
        if (badLines > LONGEST_FOOTER) {
            throw new Refusal(bad);
        }
    }

    private String text(int from, int to) {
        return new String(buffer, from, to - from, StandardCharsets.UTF_8);
    }

    private int skipBlanks(int from) {
        int p = from;
        while (buffer[p] == ' ' || buffer[p] == '\t' && separator != '\t') {
            p++;
        }
        return p;
    }

    private void skipLine(int from) {
        int p = from;
        while (!endsLine(buffer[p])) {
            p++;
        }
        p += buffer[p] == '\r' && p + 1 < limit && buffer[p + 1] == '\n' ? 2 : 1;
        at = Math.min(p, limit);
    }

    /** Whether a whole line lies at {@link #at}; reads on where it does not. */
    private boolean hasLine() throws IOException, Refusal {
        while (at >= limit) {
            if (ended) {
                limit = size;
                buffer[size] = '\n';
                return at < size;
            }
            System.arraycopy(buffer, at, buffer, 0, size - at);
            size -= at;
            at = 0;
            fill();
        }
        return true;
    }

    /** Fills the buffer and finds the end of its last whole line. */
    private void fill() throws IOException, Refusal {
        if (size == BUFFER) {
            throw Refusal.of(
                    file,
                    line,
                    "the line is longer than " + BUFFER + " bytes",
                    "one row of readings on each line",
                    "export the record again, one row on each line");
        }
        while (size < BUFFER) {
            int read = in.read(buffer, size, BUFFER - size);
            if (read < 0) {
                ended = true;
                break;
            }
            size += read;
            total += read;
        }
        if (total > MOST_BYTES) {
            throw tooMany();
        }
        int end = ended ? size : size - 1;
        while (end > 0 && buffer[end - 1] != '\n' && buffer[end - 1] != '\r') {
            end--;
        }
        limit = end;
    }

    private Refusal tooMany() {
        return Refusal.of(
                file,
                line,
                "the record is too large",
                "at most %d samples and %d bytes".formatted(MOST_SAMPLES, MOST_BYTES),
                "cut it to the firing, or keep every tenth sample");
    }

    private Refusal binary() {
        return Refusal.of(
                file,
                line,
                "this is not text: there are NUL bytes in it",
                "a heading row and rows of numbers",
                "export the record as text");
    }

    private void refuseBinary() throws Refusal {
        for (int i = 0; i < size; i++) {
            if (buffer[i] == 0) {
                throw binary();
            }
        }
    }

    private static byte[] kindsWith(String separators) {
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
