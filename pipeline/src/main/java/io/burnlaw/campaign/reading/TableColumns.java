package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Spelling;
import io.burnlaw.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The headings of a table, understood: which column holds what, in which unit. */
final class TableColumns {

    private static final Pattern HEADING = Pattern.compile("(.*?)\\s*(?:\\[([^\\]]*)\\]|\\(([^()]*)\\))?\\s*");

    private static final Pattern NUMBERED = Pattern.compile("(.+)_\\d{1,3}");

    /** A number with nothing behind it has no unit of its own. */
    private static final Pattern BARE_NUMBER = Pattern.compile("[\\d.,\\s±+/\\-\u2212eE]*\\d[\\d.,]*");

    /** A comma that cannot be a thousands separator makes all commas of the table decimal ones. */
    private static final Pattern CERTAIN_COMMA = Pattern.compile("[+\\-\u2212]?(0,\\d+|\\d+,(\\d{1,2}|\\d{4,}))\\b.*");

    private static final Pattern POINT = Pattern.compile("[+\\-\u2212]?\\d*\\.\\d+.*");

    /** A column that was found. */
    record Seen(int index, String written, Column column, Optional<WrittenUnit> unit) {}

    private final TableText table;
    private final Map<String, Column> known = new LinkedHashMap<>();
    private final Map<String, Seen> seen = new LinkedHashMap<>();
    private final Set<String> faulty = new HashSet<>();
    private final List<String> notes = new ArrayList<>();
    private final boolean commaIsDecimal;

    private TableColumns(TableText table, List<Column> columns) {
        this.table = table;
        for (Column column : columns) {
            known.put(column.name(), column);
            boolean measured = column.dimension().isPresent() && !column.name().endsWith("_uncertainty");
            column.dimension()
                    .filter(d -> measured)
                    .ifPresent(d -> known.putIfAbsent(
                            column.name() + "_uncertainty", Column.of(column.name() + "_uncertainty", d)));
        }
        this.commaIsDecimal = commaIsDecimal();
    }

    /**
     * Understands the headings.
     *
     * @param written  the table as written
     * @param columns  that it may have
     * @param problems where what is wrong is added: these concern the table as a whole
     */
    static TableColumns of(TableText written, List<Column> columns, List<Problem> problems) {
        TableText table = OtherHeadings.withUnitRow(written);
        TableColumns made = new TableColumns(table, columns);
        for (int i = 0; i < table.headings().size(); i++) {
            made.see(i, table.headings().get(i), problems);
        }
        for (Column column : columns) {
            if (column.required() && !made.seen.containsKey(column.name())) {
                problems.add(made.problem(
                        column.name(),
                        "the column is missing",
                        "",
                        "a column of this name",
                        "add a column with the heading   " + column.heading()));
            }
        }
        made.seen.values().forEach(column -> made.checkUnits(column, problems));
        return made;
    }

    Optional<Seen> column(String name) {
        return Optional.ofNullable(seen.get(name));
    }

    /** Whether the heading was refused: then its cells are not blamed one by one. */
    boolean isFaulty(String name) {
        return faulty.contains(name);
    }

    List<Seen> columns() {
        return List.copyOf(seen.values());
    }

    String file() {
        return table.file();
    }

    int width() {
        return table.headings().size();
    }

    /** The rows below the headings, and below a row of units. */
    List<TableText.Line> lines() {
        return table.lines();
    }

    /** What was guessed while the table was read. */
    List<String> tableNotes() {
        return table.notes();
    }

    List<String> notes() {
        return notes;
    }

    /** The cell with a decimal point where the table's commas are certainly decimal ones. */
    String number(String cell) {
        return commaIsDecimal ? cell.replace(',', '.') : cell;
    }

    private void see(int index, String written, List<Problem> problems) {
        if (written.isEmpty()) {
            return;
        }
        Matcher matcher = HEADING.matcher(written);
        String name = written;
        String unit = null;
        if (matcher.matches()) {
            name = matcher.group(1);
            unit = matcher.group(2) == null ? matcher.group(3) : matcher.group(2);
        }
        Optional<WrittenUnit> read = Optional.ofNullable(unit).flatMap(WrittenUnit::of);
        String asWritten = name;
        name = name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s\\-]+", "_");
        Optional<Column> column = knownAs(name);
        if (column.isEmpty()) {
            column = OtherHeadings.meant(asWritten, read, known);
            if (column.isPresent()) {
                name = column.get().name();
                notes.add("%s: the column '%s' was read as %s.".formatted(file(), Excerpt.of(written), name));
            }
        }
        if (column.isEmpty()) {
            unknown(written, name, problems);
            return;
        }
        if (unit != null && column.get().dimension().isPresent()) {
            checkUnit(column.get(), written, unit, read, problems);
        }
        if (seen.putIfAbsent(name, new Seen(index, written, column.get(), read)) != null) {
            problems.add(problem(written, "the column occurs twice", "", "each column once", "delete one of the two"));
        }
    }

    private Optional<Column> knownAs(String name) {
        if (known.containsKey(name)) {
            return Optional.of(known.get(name));
        }
        Matcher numbered = NUMBERED.matcher(name);
        return numbered.matches()
                ? Optional.ofNullable(known.get(numbered.group(1)))
                        .flatMap(Column::dimension)
                        .map(dimension -> Column.of(name, dimension))
                : Optional.empty();
    }

    /** A slip of the pen is an error; a column of the user's own is passed over and told. */
    private void unknown(String written, String name, List<Problem> problems) {
        Optional<String> near = Spelling.nearest(name, known.keySet());
        if (near.isPresent()) {
            problems.add(problem(
                    written,
                    "the column is not known",
                    written,
                    near.get(),
                    "write   " + known.get(near.get()).heading()));
        } else {
            notes.add("%s: the column '%s' is not known and was ignored.".formatted(file(), Excerpt.of(written)));
        }
    }

    private void checkUnit(
            Column column, String written, String unit, Optional<WrittenUnit> read, List<Problem> problems) {
        Dimension dimension = column.dimension().orElseThrow();
        if (read.isEmpty()) {
            faulty.add(column.name());
            problems.add(problem(
                    written,
                    "the unit is not known",
                    unit,
                    dimension.noun() + ", such as " + dimension.usual().symbol(),
                    Unit.nearest(unit, dimension)
                            .map(near -> "write   " + column.name() + " [" + near.symbol() + "]")
                            .orElse("write   " + column.heading())));
        } else if (read.get().unit().dimension() != dimension) {
            faulty.add(column.name());
            problems.add(problem(
                    written,
                    "%s is the unit of %s, not of %s"
                            .formatted(
                                    unit.strip(), read.get().unit().dimension().noun(), dimension.noun()),
                    written,
                    column.heading(),
                    "correct the unit in the heading"));
        }
    }

    /** A column without a unit in its heading is fine as long as each cell brings its own. */
    private void checkUnits(Seen column, List<Problem> problems) {
        boolean needsUnit = column.column().dimension().isPresent()
                && column.unit().isEmpty()
                && !column.written().matches(".*[\\[(].*");
        if (!needsUnit) {
            return;
        }
        for (TableText.Line line : table.lines()) {
            String cell = column.index() < line.cells().size() ? line.cells().get(column.index()) : "";
            if (BARE_NUMBER.matcher(cell).matches()) {
                faulty.add(column.column().name());
                problems.add(new Problem(
                        file(),
                        line.line(),
                        column.written(),
                        "the number has no unit",
                        cell,
                        "a unit, in the heading or in the cell",
                        "write the heading with the unit it has: "
                                + column.column()
                                        .dimension()
                                        .orElseThrow()
                                        .choicesWritten(column.column().name() + " [%s]")));
                return;
            }
        }
    }

    private boolean commaIsDecimal() {
        boolean comma = false;
        for (TableText.Line line : table.lines()) {
            for (String cell : line.cells()) {
                if (POINT.matcher(cell).matches()) {
                    return false;
                }
                comma |= CERTAIN_COMMA.matcher(cell).matches();
            }
        }
        return comma;
    }

    private Problem problem(String place, String what, String found, String expected, String mend) {
        return new Problem(file(), table.headingLine(), place, what, found, expected, mend);
    }

    /**
     * A column that a table may have.
     *
     * @param name      without unit
     * @param dimension of its values; empty for text and bare numbers
     * @param required  whether the table is of no use without it
     */
    record Column(String name, Optional<Dimension> dimension, boolean required) {

        static Column text(String name) {
            return new Column(name, Optional.empty(), false);
        }

        static Column of(String name, Dimension dimension) {
            return new Column(name, Optional.of(dimension), false);
        }

        Column needed() {
            return new Column(name, dimension, true);
        }

        /** As it should be written. */
        String heading() {
            return dimension
                    .map(d -> name + " [" + d.usual().ucum().replace("Cel", "degC") + "]")
                    .orElse(name);
        }
    }
}
