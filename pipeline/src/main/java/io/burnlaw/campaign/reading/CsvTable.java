package io.burnlaw.campaign.reading;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Problem;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a table of text: comma, semicolon or tab between the fields, found by looking at the headings. */
final class CsvTable {

    /** One cell, and one line, are never longer than this. */
    private static final int LONGEST_CELL = 1 << 16;

    private static final Pattern LINE = Pattern.compile("line (\\d{1,9})");

    private CsvTable() {}

    /**
     * Reads a table.
     *
     * @param problems where what is wrong is added
     * @return the table; empty where there is none
     */
    static Optional<TableText> read(String file, byte[] bytes, List<Problem> problems) {
        Optional<DecodedText> decoded = DecodedText.of(bytes);
        if (decoded.isEmpty()) {
            problems.add(new Problem(
                    file, 0, "", "this is not text", "", "a table as text", "export it from the spreadsheet as CSV"));
            return Optional.empty();
        }
        String text = decoded.get().text();
        List<String> notes = new ArrayList<>();
        decoded.get().note().ifPresent(note -> notes.add(file + ": " + note + "."));
        try (CsvReader<CsvRecord> reader = reader(text)) {
            Optional<TableText> table = table(file, reader, notes);
            if (table.isEmpty()) {
                problems.add(new Problem(
                        file, 0, "", "the table is empty", "", "a row of headings, and rows below it", "fill it in"));
            } else if (table.get().lines().size() > TableText.MOST_ROWS) {
                problems.add(tooManyRows(file));
                return Optional.empty();
            }
            return table;
        } catch (CsvParseException | IOException e) {
            Throwable reason = e.getCause() == null ? e : e.getCause();
            problems.add(new Problem(
                    file,
                    line(e.getMessage()),
                    "",
                    "this is not a table: " + Excerpt.of(String.valueOf(reason.getMessage())),
                    "",
                    "rows of cells, quotation marks in pairs, each cell below 64 kB",
                    "look for a quotation mark that is not closed"));
            return Optional.empty();
        }
    }

    private static CsvReader<CsvRecord> reader(String text) {
        return CsvReader.builder()
                .fieldSeparator(separator(firstLine(text)))
                .commentStrategy(CommentStrategy.SKIP)
                .commentCharacter('#')
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .trimWhitespacesAroundQuotes(true)
                .maxBufferSize(LONGEST_CELL)
                .ofCsvRecord(text);
    }

    private static String firstLine(String text) {
        return text.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.startsWith("sep="))
                .findFirst()
                .orElse("");
    }

    /** The parser's message names the line in which the record begins. */
    private static int line(String message) {
        Matcher matcher = LINE.matcher(String.valueOf(message));
        return matcher.find() ? Integer.parseInt(matcher.group(1)) : 0;
    }

    static Problem tooManyRows(String file) {
        return new Problem(
                file,
                0,
                "",
                "the table has more than " + TableText.MOST_ROWS + " rows",
                "",
                "one row for each firing",
                "split the campaign, or check that this is the log and not a trace");
    }

    private static Optional<TableText> table(String file, CsvReader<CsvRecord> reader, List<String> notes) {
        List<String> headings = null;
        int headingLine = 0;
        List<TableText.Line> lines = new ArrayList<>();
        SeenCells seen = new SeenCells();
        for (CsvRecord read : reader) {
            List<String> cells =
                    read.getFields().stream().map(String::strip).map(seen::one).toList();
            boolean blank = cells.stream().allMatch(String::isEmpty);
            int line = (int) read.getStartingLineNumber();
            if (blank || headings == null && cells.get(0).startsWith("sep=")) {
                continue;
            }
            if (headings == null) {
                headings = cells;
                headingLine = line;
            } else {
                lines.add(new TableText.Line(line, cells));
            }
            if (lines.size() > TableText.MOST_ROWS) {
                break;
            }
        }
        return headings == null
                ? Optional.empty()
                : Optional.of(new TableText(file, headingLine, headings, lines, notes));
    }

    /** Logs repeat themselves: equal cells are kept once, so that a long log takes little more than its text. */
    private static final class SeenCells {
        private static final int MOST = 10_000;
        private final Map<String, String> seen = new HashMap<>();

        String one(String cell) {
            String known = seen.get(cell);
            if (known == null && seen.size() < MOST) {
                seen.put(cell, cell);
            }
            return known == null ? cell : known;
        }
    }

    /** The one that stands most often in the headings, outside of brackets and quotation marks. */
    private static char separator(String headings) {
        int[] seen = new int[3];
        boolean quoted = false;
        int brackets = 0;
        for (int i = 0; i < headings.length(); i++) {
            char c = headings.charAt(i);
            quoted ^= c == '"';
            brackets += c == '[' ? 1 : c == ']' ? -1 : 0;
            int which = "\t;,".indexOf(c);
            if (which >= 0 && !quoted && brackets <= 0) {
                seen[which]++;
            }
        }
        if (seen[0] >= Math.max(seen[1], seen[2]) && seen[0] > 0) {
            return '\t';
        }
        return seen[1] > seen[2] ? ';' : ',';
    }
}
