package io.burnlaw.trace.reading;

import io.burnlaw.campaign.WrittenUnit;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How a record of text is laid out, found by looking at its beginning.
 *
 * @param separator    between the cells; {@link #BLANKS} for runs of spaces
 * @param decimalComma whether numbers have a decimal comma
 * @param headings     one for each column, with the unit of the row of units where there is one
 * @param firstLine    number of the first line with numbers, from 1
 * @param firstByte    where that line begins
 * @param rows         the first rows of numbers as written
 * @param notes        what was guessed, as sentences
 */
record RecordLayout(
        char separator,
        boolean decimalComma,
        List<TraceHeading> headings,
        int firstLine,
        int firstByte,
        List<List<String>> rows,
        List<String> notes) {

    static final char BLANKS = ' ';

    private static final int LOOKED_AT = 1 << 16;
    private static final int LINES_LOOKED_AT = 2000;

    /** So many lines of numbers in a row are no preamble. */
    private static final int CERTAIN = 3;

    /** So many rows near the beginning that only one convention can read settle it. */
    private static final int MANY = 100;

    /** So many rows tell what a column holds. */
    private static final int ROWS_KEPT = 50;

    /** So many times more rows than an earlier table of numbers has make that one a part of the preamble. */
    private static final int PREAMBLE_RATIO = 4;

    private static final Charset OLDER = Charset.forName("windows-1252");

    /** A line of the beginning. */
    private record Line(int number, int from, String text) {}

    /** A way of reading it. */
    private record Convention(char separator, boolean decimalComma) {

        List<String> cells(String line) {
            List<String> cells = new ArrayList<>();
            if (separator == BLANKS) {
                String stripped = line.strip();
                int from = 0;
                for (int i = 0; i <= stripped.length(); i++) {
                    if (i == stripped.length() || isBlank(stripped.charAt(i))) {
                        if (i > from || stripped.isEmpty()) {
                            cells.add(CellText.unquoted(stripped.substring(from, i)));
                        }
                        from = i + 1;
                    }
                }
                return cells;
            }
            boolean quoted = false;
            int from = 0;
            for (int i = 0; i < line.length(); i++) {
                char c = line.charAt(i);
                quoted ^= c == '"';
                if (c == separator && !quoted) {
                    cells.add(CellText.unquoted(line.substring(from, i)));
                    from = i + 1;
                }
            }
            cells.add(CellText.unquoted(line.substring(from)));
            return cells;
        }

        private static boolean isBlank(char c) {
            return c == ' ' || c >= '\t' && c <= '\r';
        }

        /** Whether the line is a single cell to this convention, seen without taking it apart. */
        private boolean isOneCell(String line) {
            if (separator != BLANKS) {
                return line.indexOf(separator) < 0;
            }
            for (int i = 0; i < line.length(); i++) {
                if (isBlank(line.charAt(i))) {
                    return false;
                }
            }
            return true;
        }

        /** What stands in a line. */
        Kind kind(String line, int narrowest) {
            if (narrowest > 1 && isOneCell(line)) {
                return Kind.TOO_NARROW;
            }
            List<String> cells = cells(line);
            int numbers = 0;
            for (String cell : cells) {
                numbers += CellText.isNumber(cell, decimalComma) ? 1 : 0;
            }
            // Most lines hold numbers only, or none for this convention: neither needs a look at what else may stand.
            boolean allReadings = numbers == cells.size()
                    || numbers > 0 && cells.stream().allMatch(cell -> CellText.isReading(cell, decimalComma));
            boolean begins = allReadings || numbers >= 2 && 2 * numbers >= cells.size();
            boolean goesOn = allReadings || 2 * numbers > cells.size();
            boolean wide = cells.size() >= narrowest;
            return new Kind(cells.size(), wide && begins, wide && goesOn, numbers > 0);
        }
    }

    /** How many cells a line has, and whether rows of numbers may begin or go on with it. */
    private record Kind(int width, boolean begins, boolean goesOn, boolean hasNumber) {

        private static final Kind TOO_NARROW = new Kind(1, false, false, false);
    }

    private static final List<Convention> CONVENTIONS = List.of(
            new Convention('\t', false),
            new Convention('\t', true),
            new Convention(';', false),
            new Convention(';', true),
            new Convention(',', false),
            new Convention(',', true),
            new Convention(BLANKS, false),
            new Convention(BLANKS, true));

    /** Lines of numbers without a break, all with the same number of cells. */
    private record Run(Convention convention, int first, int length, int width) {}

    /**
     * Looks at the beginning of a record.
     *
     * @param file  for messages
     * @param bytes that were read
     * @param size  how many of them
     * @return the layout
     * @throws Refusal where there are no rows of numbers
     */
    static RecordLayout of(String file, byte[] bytes, int size) throws Refusal {
        List<Line> start = lines(bytes, Math.min(size, LOOKED_AT), size <= LOOKED_AT, 2 * MANY);
        List<Run> settled = runs(start).filter(run -> run.length() >= MANY).toList();
        if (settled.size() == 1) {
            return around(file, bytes, start, upward(start, settled.get(0)));
        }
        List<Line> lines = lines(bytes, Math.min(size, LOOKED_AT), size <= LOOKED_AT, LINES_LOOKED_AT);
        Run best = runs(lines).reduce((a, b) -> b.length() > a.length() ? b : a).orElseThrow();
        Run single = CONVENTIONS.stream()
                .map(convention -> longest(lines, convention, 1))
                .filter(run -> run.width() == 1)
                .reduce((a, b) -> b.length() > a.length() ? b : a)
                .orElse(best);
        Run run =
                single.length() > PREAMBLE_RATIO * best.length() || isDecimalComma(bytes, lines, best) ? single : best;
        if (run.length() == 0) {
            throw Refusal.of(
                    file,
                    0,
                    "there are no rows of numbers in it",
                    "a heading row, and below it a time and a pressure in each row",
                    "export the record again as text");
        }
        return around(file, bytes, lines, upward(lines, run));
    }

    /**
     * Whether what seem to be two whole numbers with a comma between them is one with a decimal comma: it is where no
     * two headings are above, and the first does not rise as a time or a number of samples would.
     */
    private static boolean isDecimalComma(byte[] bytes, List<Line> lines, Run run) {
        if (run.convention().separator() != ',' || run.width() != 2) {
            return false;
        }
        int above = previous(lines, run.first(), false);
        if (above >= 0 && decoded(bytes, lines.get(above)).contains(",")) {
            return false;
        }
        List<List<String>> rows = rows(lines, run);
        boolean whole = rows.stream()
                .allMatch(row -> row.get(0).matches("[-+]?\\d+") && row.get(1).matches("\\d+"));
        return whole
                && IntStream.range(1, rows.size())
                        .anyMatch(i -> Double.parseDouble(rows.get(i).get(0))
                                <= Double.parseDouble(rows.get(i - 1).get(0)));
    }

    private static List<List<String>> rows(List<Line> lines, Run run) {
        return lines.subList(run.first(), lines.size()).stream()
                .map(line -> run.convention().cells(line.text()))
                .filter(cells -> cells.size() == run.width())
                .limit(ROWS_KEPT)
                .toList();
    }

    private static Stream<Run> runs(List<Line> lines) {
        return CONVENTIONS.stream().map(convention -> longest(lines, convention, 2));
    }

    /** A row with a wrong cell may stand above: it belongs to the record, and will be named. */
    private static Run upward(List<Line> lines, Run run) {
        int above = previous(lines, run.first(), false);
        if (above < 0) {
            return run;
        }
        Kind kind = run.convention().kind(lines.get(above).text(), 2);
        return kind.width() == run.width() && kind.hasNumber() && run.width() > 1
                ? upward(lines, new Run(run.convention(), above, run.length() + 1, run.width()))
                : run;
    }

    private static RecordLayout around(String file, byte[] bytes, List<Line> lines, Run run) throws Refusal {
        Line first = lines.get(run.first());
        List<String> notes = new ArrayList<>();
        List<TraceHeading> headings = headings(file, bytes, lines, run, notes);
        String between = switch (run.convention().separator()) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            case ',' -> "comma";
            default -> "blanks";
        };
        notes.add(file + ": " + (run.width() == 1 ? "one number in each row" : between + " between the cells")
                + ", decimal "
                + (run.convention().decimalComma() ? "comma" : "point")
                + ", first row of numbers on line " + first.number() + ".");
        return new RecordLayout(
                run.convention().separator(),
                run.convention().decimalComma(),
                headings,
                first.number(),
                first.from(),
                rows(lines, run),
                notes);
    }

    private static List<TraceHeading> headings(String file, byte[] bytes, List<Line> lines, Run run, List<String> notes)
            throws Refusal {
        int above = previous(lines, run.first(), false);
        List<String> texts = above < 0 ? List.of() : headingCells(bytes, lines, lines.get(above), run);
        List<String> units = List.of();
        int further = above < 0 ? -1 : previous(lines, above, false);
        boolean unitsOnly = texts.size() == run.width()
                && further >= 0
                && texts.stream()
                        .allMatch(text ->
                                text.isEmpty() || WrittenUnit.of(bare(text)).isPresent());
        if (unitsOnly && headingCells(bytes, lines, lines.get(further), run).size() == run.width()) {
            units = texts;
            texts = headingCells(bytes, lines, lines.get(further), run);
        }
        if (texts.size() != run.width()) {
            int comment = previous(lines, run.first(), true);
            List<String> commented = comment < 0 ? List.of() : headingCells(bytes, lines, lines.get(comment), run);
            if (commented.size() == run.width()) {
                texts = commented;
                notes.add("%s: the headings stand in the comment on line %d."
                        .formatted(file, lines.get(comment).number()));
            }
        }
        if (run.convention().separator() == ',' && texts.size() * 2 == run.width()) {
            throw Refusal.of(
                    file,
                    lines.get(run.first()).number(),
                    "there are twice as many cells as headings: a comma seems to stand both between and within numbers",
                    "one sign between the cells, another within numbers",
                    "export with semicolons, or with decimal points");
        }
        if (texts.size() != run.width()) {
            notes.add("%s: there are no headings above the numbers.".formatted(file));
            return IntStream.rangeClosed(1, run.width())
                    .mapToObj(number -> new TraceHeading("column " + number, "column " + number, Optional.empty()))
                    .toList();
        }
        List<TraceHeading> headings = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            TraceHeading heading = TraceHeading.of(texts.get(i));
            headings.add(i < units.size() ? heading.withUnit(bare(units.get(i))) : heading);
        }
        return headings;
    }

    private static String bare(String unit) {
        return unit.strip().replaceAll("^[\\[(]|[\\])]$", "");
    }

    /** Index of the line before which is not blank; comments only, or no comments at all. */
    private static int previous(List<Line> lines, int from, boolean comments) {
        for (int i = from - 1; i >= 0; i--) {
            String text = lines.get(i).text().strip();
            if (!text.isEmpty() && text.startsWith("#") == comments) {
                return i;
            }
            if (comments && !text.isEmpty()) {
                return -1;
            }
        }
        return -1;
    }

    private static List<String> headingCells(byte[] bytes, List<Line> lines, Line line, Run run) {
        String text = decoded(bytes, line).strip();
        if (text.startsWith("#")) {
            text = text.replaceFirst("#+\\s*", "");
        }
        if (run.convention().separator() != BLANKS) {
            return fitted(
                    run.convention().cells(text),
                    run,
                    run.convention().cells(lines.get(run.first()).text()));
        }
        for (String separator : List.of("\t+|\\s{2,}", "\\s+(?![\\[(])", "\\s+")) {
            List<String> cells = List.of(text.split(separator));
            if (cells.size() == run.width()) {
                return cells.stream().map(CellText::unquoted).toList();
            }
        }
        return List.of();
    }

    /** Separators at the end of the line may stand in the headings or in the rows only. */
    private static List<String> fitted(List<String> cells, Run run, List<String> row) {
        int width = run.width();
        while (cells.size() > width && cells.get(cells.size() - 1).isEmpty()) {
            cells.remove(cells.size() - 1);
        }
        boolean emptyBehind =
                row.subList(Math.min(cells.size(), width), width).stream().allMatch(String::isEmpty);
        while (cells.size() < width && (emptyBehind || cells.size() == width - 1)) {
            cells.add("");
        }
        return cells;
    }

    private static String decoded(byte[] bytes, Line line) {
        ByteBuffer raw = ByteBuffer.wrap(bytes, line.from(), line.text().length());
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(raw.duplicate()).toString();
        } catch (CharacterCodingException e) {
            return OLDER.decode(raw).toString();
        }
    }

    /**
     * The first run that is long enough; one that is much longer than those before it, which are a part of the preamble;
     * or else the longest.
     */
    private static Run longest(List<Line> lines, Convention convention, int narrowest) {
        Run best = new Run(convention, 0, 0, 0);
        Run run = best;
        for (int i = 0; i < lines.size(); i++) {
            String text = lines.get(i).text();
            if (text.isBlank() || text.startsWith("#")) {
                continue;
            }
            Kind kind = convention.kind(text, narrowest);
            if (run.length() > 0 && kind.width() == run.width() && kind.goesOn()) {
                run = new Run(convention, run.first(), run.length() + 1, run.width());
            } else {
                if (best.length() >= MANY) {
                    return best;
                }
                run = kind.begins() ? new Run(convention, i, 1, kind.width()) : new Run(convention, 0, 0, 0);
            }
            boolean sameStart = run.first() == best.first();
            boolean longer = best.length() < CERTAIN
                    ? run.length() > best.length()
                    : run.length() > PREAMBLE_RATIO * best.length();
            best = sameStart && run.length() > best.length() || longer ? run : best;
        }
        return best;
    }

    private static List<Line> lines(byte[] bytes, int size, boolean complete, int most) {
        List<Line> lines = new ArrayList<>();
        boolean marked =
                size >= 3 && (bytes[0] & 0xFF) == 0xEF && (bytes[1] & 0xFF) == 0xBB && (bytes[2] & 0xFF) == 0xBF;
        int from = marked ? 3 : 0;
        int number = 1;
        for (int i = from; i < size && lines.size() < most; i++) {
            if (bytes[i] == '\n' || bytes[i] == '\r') {
                lines.add(new Line(number++, from, new String(bytes, from, i - from, StandardCharsets.ISO_8859_1)));
                i += bytes[i] == '\r' && i + 1 < size && bytes[i + 1] == '\n' ? 1 : 0;
                from = i + 1;
            }
        }
        if (complete && from < size && lines.size() < most) {
            lines.add(new Line(number, from, new String(bytes, from, size - from, StandardCharsets.ISO_8859_1)));
        }
        return lines;
    }
}
