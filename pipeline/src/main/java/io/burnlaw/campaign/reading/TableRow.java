package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.DecimalNumber;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One row of a table, read cell by cell; whatever is wrong concerns this row alone. */
final class TableRow implements Place {

    private final TableColumns columns;
    private final TableText.Line line;
    private final List<Problem> problems = new ArrayList<>();

    TableRow(TableColumns columns, TableText.Line line) {
        this.columns = columns;
        this.line = line;
        if (!whole()) {
            wrong(
                    "",
                    "the row and the headings have different numbers of cells",
                    line.cells().size() == 1 ? "1 cell" : line.cells().size() + " cells",
                    columns.width() + " cells",
                    mendOfCells());
        }
    }

    private String mendOfCells() {
        Optional<String> swallowing =
                line.cells().stream().filter(this::swallowsOthers).findFirst();
        if (swallowing.isPresent()) {
            return "close the quotation mark that opens before   "
                    + Excerpt.of(swallowing.get().lines().findFirst().orElse(""));
        }
        return line.cells().size() < columns.width()
                ? "add the missing ones"
                : "remove the surplus ones, or put cells that contain the separator in quotation marks";
    }

    /** A cell that runs over lines, or holds as many separators as cells are missing, does so by a quotation mark. */
    private boolean swallowsOthers(String cell) {
        long separators = cell.chars().filter(c -> ",;\t".indexOf(c) >= 0).count();
        int missing = columns.width() - line.cells().size();
        return missing > 0 && separators >= missing || cell.contains("\n");
    }

    int line() {
        return line.line();
    }

    List<Problem> problems() {
        return problems;
    }

    private boolean whole() {
        return line.cells().size() == columns.width();
    }

    @Override
    public Optional<String> text(String name) {
        return columns.column(name)
                .filter(column -> column.index() < line.cells().size())
                .map(column -> line.cells().get(column.index()))
                .filter(cell -> !cell.isEmpty());
    }

    String required(String name) {
        Optional<String> text = text(name);
        if (text.isEmpty() && columns.column(name).isPresent()) {
            wrong(name, "the cell is empty", "", "a value", "fill it in");
        }
        return text.orElse("");
    }

    Optional<Measured> measured(String name) {
        return text(name).flatMap(cell -> quantity(name, cell)).map(value -> withOwnUncertainty(name, value));
    }

    /** A value above zero; an empty cell is none. */
    Optional<Measured> positive(String name) {
        return above(name, measured(name), "measure it again");
    }

    /** A length above zero that a motor can have. */
    Optional<Measured> length(String name) {
        return positive(name).filter(value -> plausible(name, Plausible.LENGTH, value));
    }

    OptionalDouble temperature(String name) {
        return Place.value(positive(name).filter(value -> plausible(name, Plausible.TEMPERATURE, value)));
    }

    /** The pressure of the air [Pa, absolute]. */
    OptionalDouble ambientPressure(String name) {
        return Place.value(positive(name).filter(value -> plausible(name, Plausible.AMBIENT_PRESSURE, value)));
    }

    OptionalInt count(String name, int low, int high) {
        Optional<String> cell = text(name);
        if (cell.isEmpty()) {
            return OptionalInt.empty();
        }
        OptionalDouble value = DecimalNumber.read(cell.get());
        double number = value.orElse(Double.NaN);
        if (!(number >= low && number <= high && number == Math.rint(number))) {
            wrong(
                    name,
                    "this is not a whole number in the allowed range",
                    cell.get(),
                    "a whole number from " + low + " to " + high,
                    "correct it");
            return OptionalInt.empty();
        }
        return OptionalInt.of((int) number);
    }

    /** Why the row is set aside; empty where it is used. */
    Optional<String> setAside() {
        String use = text("use").orElse("yes");
        String[] parts = use.split(":", 2);
        return switch (parts[0].strip().toLowerCase(java.util.Locale.ROOT)) {
            case "yes", "y", "true", "1" -> Optional.empty();
            case "no", "n", "false", "0" ->
                Optional.of(
                        parts.length == 2 && !parts[1].isBlank() ? parts[1].strip() : "no reason is given in the log");
            default -> {
                wrong(
                        "use",
                        "this is neither yes nor no",
                        use,
                        "yes, or no: and a reason",
                        "write   no: and the reason");
                yield Optional.empty();
            }
        };
    }

    /** What the unit of the heading or of the cell says that a pressure counts from. */
    Optional<PressureKind> kindByUnit(String name) {
        return text(name)
                .flatMap(cell -> WrittenPressure.of(cell).kind())
                .or(() -> columns.column(name).flatMap(TableColumns.Seen::unit).flatMap(WrittenUnit::kind));
    }

    <E extends Enum<E>> Optional<E> choice(String name, Class<E> type) {
        return text(name).flatMap(cell -> {
            Optional<E> choice = Choice.of(type, cell);
            if (choice.isEmpty()) {
                wrong(
                        name,
                        "the word is not known",
                        cell,
                        String.join(" or ", Choice.words(type)),
                        "write one of them");
            }
            return choice;
        });
    }

    /** Several quantities in one cell, one for each segment: {@code 60 + 60 + 45}. */
    List<Measured> sum(String name) {
        List<Measured> parts = new ArrayList<>();
        for (String part : text(name).orElse("").split("\\+(?!/?-)")) {
            if (!part.isBlank()) {
                quantity(name, part.strip()).ifPresent(parts::add);
            }
        }
        return parts;
    }

    Optional<Measured> quantity(String name, String text) {
        TableColumns.Seen column = columns.column(name).orElseThrow();
        if (columns.isFaulty(column.column().name())) {
            return Optional.empty();
        }
        Dimension dimension = column.column().dimension().orElseThrow();
        String plain = columns.number(
                dimension == Dimension.PRESSURE ? WrittenPressure.of(text).plain() : text);
        QuantityReading reading = column.unit().isPresent()
                ? Quantity.read(plain, column.unit().get().unit())
                : Quantity.read(plain, dimension);
        return reading.match(read -> Optional.of(read.quantity().si()), misread -> {
            wrong(name, misread.what(), text, misread.expected(), misread.mend());
            return Optional.empty();
        });
    }

    @Override
    public void wrong(String name, String what, String found, String expected, String mend) {
        if (!whole() && !problems.isEmpty()) {
            // its cells stand under headings that are not theirs: what else is wrong follows from that
            return;
        }
        String place = columns.column(name).map(TableColumns.Seen::written).orElse(name);
        Problem problem = new Problem(columns.file(), line.line(), place, what, found, expected, mend);
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
    }

    private Measured withOwnUncertainty(String name, Measured value) {
        String uncertainty = name + "_uncertainty";
        Optional<Measured> std = columns.column(uncertainty)
                        .filter(column -> column.column().dimension().isPresent())
                        .isPresent()
                ? text(uncertainty).flatMap(cell -> difference(uncertainty, cell))
                : Optional.empty();
        if (std.isPresent() && !(std.get().value() >= 0)) {
            wrong(uncertainty, "an uncertainty is not negative", "zero or more", "correct it");
            return value;
        }
        return std.map(s -> Measured.of(value.value(), s.value())).orElse(value);
    }

    /** An uncertainty is a difference: of a temperature of 1 °C it is 1 K. */
    private Optional<Measured> difference(String name, String cell) {
        TableColumns.Seen column = columns.column(name).orElseThrow();
        return quantity(name, cell)
                .map(value -> column.column().dimension().orElseThrow() == Dimension.TEMPERATURE
                        ? Measured.of(column.unit()
                                .map(unit ->
                                        unit.unit().differenceToSi(unit.unit().fromSi(value.value())))
                                .orElse(value.value()))
                        : value);
    }

    boolean plausible(String name, Plausible bounds, Measured value) {
        return plausible(name, bounds, value, "check the unit");
    }
}
