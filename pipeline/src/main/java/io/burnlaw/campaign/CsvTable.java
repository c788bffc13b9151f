package io.burnlaw.campaign;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a table of text: comma, semicolon or tab between the fields, found by looking at the headings. */
final class CsvTable {

    /** One cell, and one line, are never longer than this. */
    private static final int LONGEST_CELL = 1 << 16;

    private CsvTable() {}

    /**
     * Reads a table.
     *
     * @param file     for messages
     * @param bytes    of the file
     * @param problems where what is wrong is added
     * @return the table; empty where there is none
     */
    static Optional<TableText> read(String file, byte[] bytes, List<Problem> problems) {
        Optional<DecodedText> decoded = DecodedText.of(bytes);
        if (decoded.isEmpty()) {
            problems.add(new Problem(
                    file, 0, "", "this is no text", "", "a table as text", "export it from the spreadsheet as CSV"));
            return Optional.empty();
        }
        String text = decoded.get().text();
        List<String> notes = new ArrayList<>();
        decoded.get().note().ifPresent(note -> notes.add(file + ": " + note + "."));
        String headingLine = text.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.startsWith("sep="))
                .findFirst()
                .orElse("");
        char separator = separator(headingLine);
        TableText table = null;
        String wrong = "";
        int line = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .commentStrategy(CommentStrategy.SKIP)
                .commentCharacter('#')
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .trimWhitespacesAroundQuotes(true)
                .maxBufferSize(LONGEST_CELL)
                .ofCsvRecord(text)) {
            table = table(file, reader, notes);
        } catch (CsvParseException e) {
            Throwable cause = e.getCause() == null ? e : e.getCause();
            wrong = Excerpt.of(String.valueOf(cause.getMessage()));
        } catch (IOException e) {
            wrong = "it cannot be read";
        }
        if (table == null) {
            problems.add(
                    wrong.isEmpty()
                            ? new Problem(
                                    file,
                                    0,
                                    "",
                                    "the table is empty",
                                    "",
                                    "a row of headings, and rows below it",
                                    "fill it in")
                            : new Problem(
                                    file,
                                    line,
                                    "",
                                    "this is no table: " + wrong,
                                    "",
                                    "rows of cells, quotation marks in pairs, each cell below 64 kB",
                                    "look for a quotation mark that is not closed"));
            return Optional.empty();
        }
        if (table.lines().size() > TableText.MOST_ROWS) {
            problems.add(new Problem(
                    file,
                    0,
                    "",
                    "the table has more than " + TableText.MOST_ROWS + " rows",
                    "",
                    "one row a firing",
                    "split the campaign, or check that this is the log and not a trace"));
            return Optional.empty();
        }
        return Optional.of(table);
    }

    private static TableText table(String file, CsvReader<CsvRecord> reader, List<String> notes) {
        List<String> headings = null;
        int headingLine = 0;
        List<TableText.Line> lines = new ArrayList<>();
        for (CsvRecord read : reader) {
            List<String> cells = read.getFields().stream().map(String::strip).toList();
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
        return headings == null ? null : new TableText(file, headingLine, headings, lines, notes);
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
