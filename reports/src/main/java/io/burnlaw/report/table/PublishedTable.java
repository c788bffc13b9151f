package io.burnlaw.report.table;

import com.fasterxml.jackson.core.io.NumberOutput;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Invisible;
import io.burnlaw.report.document.MadeOnDemand;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A table as a CSV file (RFC 4180, but {@code \n}) and its description after W3C CSV on the Web (Metadata Vocabulary
 * for Tabular Data, 2015).
 *
 * @param columns from left to right
 * @param rows as long as there are columns
 */
public record PublishedTable(String fileName, String title, List<Column> columns, List<List<Cell>> rows) {

    /**
     * One column.
     *
     * @param unit UCUM code; absent for text and pure numbers
     * @param datatype of CSVW, such as {@code double}
     */
    public record Column(String name, @Nullable String unit, String datatype, String description) {

        /** {@return the heading, with the unit where there is one} */
        public String heading() {
            return unit == null ? name : name + " [" + unit + "]";
        }
    }

    /**
     * One cell.
     *
     * @param text as it stands in the file, before quoting
     */
    public record Cell(String text) {

        /** Nothing known. */
        public static final Cell EMPTY = new Cell("");

        /**
         * A number in full.
         *
         * @param value or null for an empty cell
         */
        public static Cell of(@Nullable Number value) {
            if (value instanceof Double number) {
                // as in the document, and as every version of Java writes it
                return new Cell(NumberOutput.toString(number, true));
            }
            return value == null ? EMPTY : new Cell(value.toString());
        }

        /**
         * Words from outside. A spreadsheet would run a text that starts like a formula (CWE-1236), so such a text gets
         * an apostrophe in front.
         *
         * @param text or null for an empty cell
         */
        public static Cell of(@Nullable String text) {
            if (text == null) {
                return EMPTY;
            }
            String shown = Invisible.shown(text);
            boolean formula = !shown.isEmpty()
                    && "=+-@\uff1d\uff0b\uff0d\uff20"
                                    .indexOf(
                                            shown.stripLeading().isEmpty()
                                                    ? ' '
                                                    : shown.stripLeading().charAt(0))
                            >= 0;
            return new Cell(formula ? "'" + shown : shown);
        }
    }

    public PublishedTable {
        columns = List.copyOf(columns);
        rows = rows instanceof MadeOnDemand ? rows : List.copyOf(rows);
        for (List<Cell> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(row.size() + " cells under " + columns.size() + " headings");
            }
        }
    }

    /**
     * Writes the file.
     *
     * @throws IOException if it cannot be written
     */
    public void write(Writer out) throws IOException {
        out.write(columns.stream().map(column -> quoted(column.heading())).collect(Collectors.joining(",", "", "\n")));
        for (List<Cell> row : rows) {
            out.write(row.stream().map(cell -> quoted(cell.text())).collect(Collectors.joining(",", "", "\n")));
        }
    }

    /** {@return the description, as JSON} */
    public String metadata() {
        List<Map<String, Object>> described = new ArrayList<>();
        for (Column column : columns) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", column.name());
            one.put("titles", column.heading());
            one.put("datatype", column.datatype());
            one.put("dc:description", column.description());
            if (column.unit() != null) {
                one.put("schema:unitText", column.unit());
            }
            described.add(one);
        }
        Map<String, Object> metadata = new LinkedHashMap<>();
        metadata.put("@context", List.of("http://www.w3.org/ns/csvw", Map.of("@language", "en")));
        metadata.put("url", fileName);
        metadata.put("dc:title", title);
        metadata.put("dialect", Map.of("lineTerminators", List.of("\n")));
        metadata.put("tableSchema", Map.of("columns", described));
        return DocumentFile.text(metadata);
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
                && text.equals(text.strip());
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
