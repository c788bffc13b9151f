package io.burnlaw.report.table;

import com.fasterxml.jackson.core.io.NumberOutput;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Invisible;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import java.io.IOException;
import java.io.Writer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tech.tablesaw.api.BooleanColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.columns.Column;

/**
 * A table of results: columns of Tablesaw, each with its unit and what it holds. The page, the terminal and the CSV files
 * are drawn from it. The columns are not put into a {@code Table} of Tablesaw: its start searches the whole jar for
 * readers and writers of files, and that takes a tenth of a short run.
 */
public final class TypedTable {

    private static final String UNCERTAINTY = "_uncertainty";
    private static final String LOW = "_low";
    private static final String HIGH = "_high";
    private static final String LEVEL = "_level";

    private final String name;
    private final String title;
    private final int size;
    private final Map<String, TypedColumn> columns;

    private TypedTable(String name, String title, int size, Map<String, TypedColumn> columns) {
        this.name = name;
        this.title = title;
        this.size = size;
        this.columns = columns;
    }

    /**
     * A column.
     *
     * @param cells with its name in snake_case
     * @param unit UCUM code; absent for text and pure numbers
     * @param description a sentence; absent where the column is not in the CSV file
     */
    public record TypedColumn(
            Column<?> cells,
            @Nullable String unit,
            @Nullable String description) {

        /** {@return the heading in the file, with the unit where there is one} */
        public String heading() {
            return unit == null ? cells.name() : cells.name() + " [" + unit + "]";
        }

        private String datatype() {
            return cells instanceof StringColumn
                    ? "string"
                    : cells.type().name().toLowerCase(Locale.ROOT);
        }

        private String text(int row) {
            if (cells.isMissing(row)) {
                return "";
            }
            if (cells instanceof DoubleColumn numbers) {
                // as in the document, and as every version of Java writes it
                return NumberOutput.toString(numbers.getDouble(row), true);
            }
            return cells instanceof StringColumn words ? harmless(words.get(row)) : cells.getUnformattedString(row);
        }
    }

    /**
     * The columns of a table, filled one after the other.
     *
     * @param <R> what a row is about
     */
    public static final class Filling<R> {

        private final String name;
        private final String title;
        private final List<R> rows;
        private final Map<String, TypedColumn> columns = new LinkedHashMap<>();

        private Filling(String name, String title, List<R> rows) {
            this.name = name;
            this.title = title;
            this.rows = rows;
        }

        /**
         * A column of words.
         *
         * @param column      in snake_case
         * @param description a sentence; null where it is not in the file
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> words(String column, @Nullable String description, Function<R, @Nullable String> cell) {
            StringColumn cells = StringColumn.create(column);
            rows.forEach(row -> cells.append(Objects.requireNonNullElse(cell.apply(row), "")));
            return add(cells, null, description);
        }

        /**
         * A column of whole numbers.
         *
         * @param column      in snake_case
         * @param description a sentence; null where it is not in the file
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> count(String column, @Nullable String description, Function<R, @Nullable Integer> cell) {
            IntColumn cells = IntColumn.create(column);
            rows.forEach(row -> cells.append(cell.apply(row)));
            return add(cells, null, description);
        }

        /**
         * A column of true and false.
         *
         * @param column      in snake_case
         * @param description a sentence; null where it is not in the file
         * @param cell        whether
         * @return this
         */
        public Filling<R> truth(String column, @Nullable String description, Predicate<R> cell) {
            BooleanColumn cells = BooleanColumn.create(column);
            rows.forEach(row -> cells.append(cell.test(row)));
            return add(cells, null, description);
        }

        /**
         * A column of numbers.
         *
         * @param column      in snake_case
         * @param unit        UCUM code, or null
         * @param description a sentence; null where it is not in the file
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> number(
                String column,
                @Nullable String unit,
                @Nullable String description,
                Function<R, @Nullable Double> cell) {
            double[] cells = rows.stream()
                    .mapToDouble(row -> Objects.requireNonNullElse(cell.apply(row), Double.NaN))
                    .toArray();
            boolean needed = description != null || !Arrays.stream(cells).allMatch(Double::isNaN);
            return needed ? add(DoubleColumn.create(column, cells), unit, description) : this;
        }

        /**
         * A quantity of which the file has the value.
         *
         * @param column      in snake_case
         * @param unit        of the column, or null for a pure number
         * @param description a sentence; null where it is not in the file
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> value(
                String column,
                @Nullable Unit unit,
                @Nullable String description,
                Function<R, @Nullable Quantity> cell) {
            return quantity(column, unit, description, null, null, null, cell);
        }

        /**
         * A quantity of which the file has value and standard uncertainty.
         *
         * @param column      in snake_case
         * @param unit        of the column, or null for a pure number
         * @param description a sentence
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> withStd(
                String column, @Nullable Unit unit, String description, Function<R, @Nullable Quantity> cell) {
            String std = "Standard uncertainty of the " + column + ".";
            return quantity(column, unit, description, std, null, null, cell);
        }

        /**
         * A quantity of which the file has value and interval.
         *
         * @param column      in snake_case
         * @param unit        of the column, or null for a pure number
         * @param description a sentence
         * @param cell        null where nothing is known
         * @return this
         */
        public Filling<R> withInterval(
                String column, @Nullable Unit unit, String description, Function<R, @Nullable Quantity> cell) {
            return quantity(
                    column, unit, description, null, "Lower end of its interval.", "Upper end of its interval.", cell);
        }

        private Filling<R> quantity(
                String column,
                @Nullable Unit unit,
                @Nullable String description,
                @Nullable String ofStd,
                @Nullable String ofLow,
                @Nullable String ofHigh,
                Function<R, @Nullable Quantity> cell) {
            Function<R, @Nullable Quantity> inUnit = unit == null ? cell : row -> unit.of(cell.apply(row));
            String code = unit == null ? null : unit.code();
            return number(column, code, description, part(inUnit, Quantity::value))
                    .number(column + UNCERTAINTY, code, ofStd, part(inUnit, Quantity::std))
                    .number(column + LOW, code, ofLow, part(inUnit, Quantity::low))
                    .number(column + HIGH, code, ofHigh, part(inUnit, Quantity::high))
                    .number(column + LEVEL, null, null, part(inUnit, Quantity::level));
        }

        private static <R> Function<R, @Nullable Double> part(
                Function<R, @Nullable Quantity> cell, Function<Quantity, @Nullable Double> part) {
            return row -> {
                Quantity quantity = cell.apply(row);
                return quantity == null ? null : part.apply(quantity);
            };
        }

        private Filling<R> add(Column<?> cells, @Nullable String unit, @Nullable String description) {
            columns.put(cells.name(), new TypedColumn(cells, unit, description));
            return this;
        }

        /** {@return the table} */
        public TypedTable table() {
            return new TypedTable(name, title, rows.size(), columns);
        }
    }

    /**
     * Begins a table.
     *
     * @param name  of the table, and of its file before {@code .csv}
     * @param title what it holds
     * @param rows  what its rows are about, from top to bottom
     * @param <R>   what a row is about
     * @return to be filled
     */
    public static <R> Filling<R> of(String name, String title, List<R> rows) {
        return new Filling<>(name, title, rows);
    }

    /** {@return the name of its CSV file} */
    public String fileName() {
        return name + ".csv";
    }

    /** {@return how many rows it has} */
    public int size() {
        return size;
    }

    /** {@return the columns of the CSV file, from left to right} */
    public List<TypedColumn> published() {
        return columns.values().stream()
                .filter(column -> column.description() != null)
                .toList();
    }

    /**
     * Words of a cell.
     *
     * @param column of words
     * @param row    from 0
     * @return empty where nothing is known
     */
    public String words(String column, int row) {
        return ((StringColumn) cells(column)).get(row);
    }

    /**
     * Whether a cell is true.
     *
     * @param column of true and false
     * @param row    from 0
     * @return whether
     */
    public boolean truth(String column, int row) {
        return ((BooleanColumn) cells(column)).get(row);
    }

    /**
     * A whole number of a cell.
     *
     * @param column of whole numbers
     * @param row    from 0
     * @return it
     */
    public int count(String column, int row) {
        return ((IntColumn) cells(column)).getInt(row);
    }

    /**
     * A number of a cell.
     *
     * @param column of numbers
     * @param row    from 0
     * @return null where nothing is known
     */
    public @Nullable Double number(String column, int row) {
        DoubleColumn cells = columns.containsKey(column) ? (DoubleColumn) cells(column) : null;
        return cells == null || cells.isMissing(row) ? null : (Double) cells.getDouble(row);
    }

    /**
     * A quantity of a cell.
     *
     * @param column of quantities
     * @param row    from 0
     * @return in the unit of the column, with all that is known of it; null where nothing is known
     */
    public @Nullable Quantity quantity(String column, int row) {
        Double value = number(column, row);
        return value == null
                ? null
                : new Quantity(
                        value,
                        columns.get(column).unit(),
                        number(column + LOW, row),
                        number(column + HIGH, row),
                        number(column + LEVEL, row),
                        number(column + UNCERTAINTY, row));
    }

    private Column<?> cells(String column) {
        return Objects.requireNonNull(columns.get(column), column).cells();
    }

    /**
     * Writes the CSV file (RFC 4180, but {@code \n}).
     *
     * @param out left open
     * @throws IOException if it cannot be written
     */
    public void write(Writer out) throws IOException {
        List<TypedColumn> shown = published();
        out.write(shown.stream().map(column -> quoted(column.heading())).collect(Collectors.joining(",", "", "\n")));
        for (int i = 0; i < size; i++) {
            int row = i;
            out.write(
                    shown.stream().map(column -> quoted(column.text(row))).collect(Collectors.joining(",", "", "\n")));
        }
    }

    /** {@return the description after W3C CSV on the Web (Metadata Vocabulary for Tabular Data, 2015), as JSON} */
    public String metadata() {
        Map<String, Object> metadata = new LinkedHashMap<>();
        metadata.put("@context", List.of("http://www.w3.org/ns/csvw", Map.of("@language", "en")));
        metadata.put("url", fileName());
        metadata.put("dc:title", title);
        metadata.put("dialect", Map.of("lineTerminators", List.of("\n")));
        metadata.put(
                "tableSchema",
                Map.of(
                        "columns",
                        published().stream().map(TypedTable::described).toList()));
        return DocumentFile.text(metadata);
    }

    private static Map<String, Object> described(TypedColumn column) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("name", column.cells().name());
        one.put("titles", column.heading());
        one.put("datatype", column.datatype());
        one.put("dc:description", column.description());
        if (column.unit() != null) {
            one.put("schema:unitText", column.unit());
        }
        return one;
    }

    /** A spreadsheet would run a text that starts like a formula (CWE-1236), so such a text gets an apostrophe in front. */
    private static String harmless(String words) {
        String shown = Invisible.shown(words);
        String start = shown.stripLeading();
        boolean formula = !start.isEmpty() && "=+-@\uff1d\uff0b\uff0d\uff20".indexOf(start.charAt(0)) >= 0;
        return formula ? "'" + shown : shown;
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
                && text.equals(text.strip());
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
