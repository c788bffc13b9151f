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
 * A table of results: columns of Tablesaw, each with its unit and what it holds. Page, terminal and CSV file are drawn from
 * it. The columns are not put into a {@code Table} of Tablesaw: its start searches the whole jar for readers and writers
 * of files, and that takes a tenth of a short run.
 *
 * <p>A column is named in snake_case. One without a description is for people only, and not in the file.
 *
 * @param <R> what a row is about
 */
public final class TypedTable<R> {

    private final String name;
    private final String title;
    private final List<R> rows;
    private final Map<String, TypedColumn> columns = new LinkedHashMap<>();

    /**
     * A table without columns.
     *
     * @param name of the table, and of its file before {@code .csv}
     * @param rows what its rows are about, from top to bottom
     */
    public TypedTable(String name, String title, List<R> rows) {
        this.name = name;
        this.title = title;
        this.rows = List.copyOf(rows);
    }

    /** What may be known of a quantity beside its value. */
    public enum Part {
        /** Its standard uncertainty. */
        STD("_uncertainty", "Standard uncertainty of the %s.", Quantity::std),
        /** Lower end of its interval. */
        LOW("_low", "Lower end of its interval.", Quantity::low),
        /** Upper end of its interval. */
        HIGH("_high", "Upper end of its interval.", Quantity::high),
        /** Confidence of its interval. */
        LEVEL("_level", "Confidence of its interval.", Quantity::level);

        private final String ending;
        private final String description;
        private final Function<Quantity, @Nullable Double> figure;

        Part(String ending, String description, Function<Quantity, @Nullable Double> figure) {
            this.ending = ending;
            this.description = description;
            this.figure = figure;
        }
    }

    /**
     * A column.
     *
     * @param unit UCUM code; absent for text and pure numbers
     * @param description a sentence; absent where the column is not in the file
     */
    public record TypedColumn(
            Column<?> cells,
            @Nullable String unit,
            @Nullable String description) {

        /** {@return the heading in the file, with the unit where there is one} */
        public String heading() {
            return unit == null ? cells.name() : cells.name() + " [" + unit + "]";
        }

        private Map<String, Object> described() {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", cells.name());
            one.put("titles", heading());
            one.put(
                    "datatype",
                    cells instanceof StringColumn
                            ? "string"
                            : cells.type().name().toLowerCase(Locale.ROOT));
            one.put("dc:description", description);
            if (unit != null) {
                one.put("schema:unitText", unit);
            }
            return one;
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

    /** {@return this, with a column of words; a cell is null where nothing is known} */
    public TypedTable<R> words(String column, @Nullable String description, Function<R, @Nullable String> cell) {
        StringColumn cells = StringColumn.create(column);
        rows.forEach(row -> cells.append(Objects.requireNonNullElse(cell.apply(row), "")));
        return with(cells, null, description);
    }

    /** {@return this, with a column of whole numbers; a cell is null where nothing is known} */
    public TypedTable<R> count(String column, @Nullable String description, Function<R, @Nullable Integer> cell) {
        IntColumn cells = IntColumn.create(column);
        rows.forEach(row -> cells.append(cell.apply(row)));
        return with(cells, null, description);
    }

    /** {@return this, with a column of true and false} */
    public TypedTable<R> truth(String column, @Nullable String description, Predicate<R> cell) {
        BooleanColumn cells = BooleanColumn.create(column);
        rows.forEach(row -> cells.append(cell.test(row)));
        return with(cells, null, description);
    }

    /** {@return this, with a column of pure numbers; a cell is null where nothing is known} */
    public TypedTable<R> number(String column, @Nullable String description, Function<R, @Nullable Double> cell) {
        return number(column, null, description, cell);
    }

    /** {@return this, with a column of numbers; a cell is null where nothing is known} */
    public TypedTable<R> number(
            String column, @Nullable String unit, @Nullable String description, Function<R, @Nullable Double> cell) {
        double[] cells = rows.stream()
                .mapToDouble(row -> Objects.requireNonNullElse(cell.apply(row), Double.NaN))
                .toArray();
        boolean needed = description != null || !Arrays.stream(cells).allMatch(Double::isNaN);
        return needed ? with(DoubleColumn.create(column, cells), unit, description) : this;
    }

    /**
     * Adds columns of a value and of what else is known of it.
     *
     * @param unit      into which the quantities are converted; null for pure numbers
     * @param published what the file has beside the value
     */
    public TypedTable<R> quantity(
            String column,
            @Nullable Unit unit,
            @Nullable String description,
            Function<R, @Nullable Quantity> cell,
            Part... published) {
        Function<R, @Nullable Quantity> inUnit = unit == null ? cell : row -> unit.of(cell.apply(row));
        String code = unit == null ? null : unit.code();
        number(column, code, description, figure(inUnit, Quantity::value));
        for (Part part : Part.values()) {
            String said = Arrays.asList(published).contains(part) ? part.description.formatted(column) : null;
            number(column + part.ending, part == Part.LEVEL ? null : code, said, figure(inUnit, part.figure));
        }
        return this;
    }

    private static <R> Function<R, @Nullable Double> figure(
            Function<R, @Nullable Quantity> cell, Function<Quantity, @Nullable Double> figure) {
        return row -> {
            Quantity quantity = cell.apply(row);
            return quantity == null ? null : figure.apply(quantity);
        };
    }

    private TypedTable<R> with(Column<?> cells, @Nullable String unit, @Nullable String description) {
        columns.put(cells.name(), new TypedColumn(cells, unit, description));
        return this;
    }

    /** {@return how many rows it has} */
    public int size() {
        return rows.size();
    }

    /** {@return what the rows are about} */
    public List<R> about() {
        return rows;
    }

    /** {@return what a row is about, for lists and pictures that have no cell} */
    public R row(int row) {
        return rows.get(row);
    }

    /** {@return words, empty where nothing is known} */
    public String words(String column, int row) {
        return ((StringColumn) cells(column)).get(row);
    }

    /** {@return whether it is so} */
    public boolean truth(String column, int row) {
        return ((BooleanColumn) cells(column)).get(row);
    }

    /** {@return a whole number that is known} */
    public int count(String column, int row) {
        return ((IntColumn) cells(column)).getInt(row);
    }

    /** {@return a number, null where nothing is known} */
    public @Nullable Double number(String column, int row) {
        DoubleColumn cells = columns.containsKey(column) ? (DoubleColumn) cells(column) : null;
        return cells == null || cells.isMissing(row) ? null : (Double) cells.getDouble(row);
    }

    /** {@return a quantity in the unit of its column with all that is known of it, null where nothing is known} */
    public @Nullable Quantity quantity(String column, int row) {
        Double value = number(column, row);
        return value == null
                ? null
                : new Quantity(
                        value,
                        columns.get(column).unit(),
                        number(column + Part.LOW.ending, row),
                        number(column + Part.HIGH.ending, row),
                        number(column + Part.LEVEL.ending, row),
                        number(column + Part.STD.ending, row));
    }

    private Column<?> cells(String column) {
        return Objects.requireNonNull(columns.get(column), column).cells();
    }

    /** {@return the name of its CSV file} */
    public String fileName() {
        return name + ".csv";
    }

    /** {@return the columns of the file, from left to right} */
    public List<TypedColumn> published() {
        return columns.values().stream()
                .filter(column -> column.description() != null)
                .toList();
    }

    /**
     * Writes the CSV file (RFC 4180, but {@code \n}).
     *
     * @throws IOException if it cannot be written
     */
    public void write(Writer out) throws IOException {
        List<TypedColumn> shown = published();
        out.write(shown.stream().map(column -> quoted(column.heading())).collect(Collectors.joining(",", "", "\n")));
        for (int i = 0; i < rows.size(); i++) {
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
                        published().stream().map(TypedColumn::described).toList()));
        return DocumentFile.text(metadata);
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
