package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.quantity.Dimension;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What to write into campaign.yaml where the columns of a record do not say enough: the first rows by column, and the
 * lines to put below {@code trace:}. Nothing of this is taken without being written: a guessed unit could send somebody
 * to a pressure that was never meant.
 *
 * @param line     of the headings or of the first numbers
 * @param headings one for each column
 * @param rows     first rows as written
 * @param settings what the campaign says already
 */
record ColumnAdvice(
        String file, int line, List<TraceHeading> headings, List<List<String>> rows, TraceSettings settings) {

    /** Rows that are shown. */
    private static final int SHOWN = 3;

    /** Columns that are shown; the place of a message is short. */
    private static final int COLUMNS_SHOWN = 4;

    /** Names of the numbers of samples. */
    static final List<String> SAMPLE_NAMES =
            List.of(("sample|samples|sample no|sample no.|sample number|sample #|index|idx|n|no|no.|nr|nr.|#|"
                            + "number|point|record|scan|row|i")
                    .split("\\|"));

    private static final String SAMPLING = "sampling: 2 kHz  # the rate of your logger";

    private static final Pattern PRESSURE_NAME =
            Pattern.compile("p|pc|p_?c|.*(press|chamber|druck|transducer|adc|raw|sensor|volt|ain|\\bch).*");
    private static final Pattern CERTAIN_PRESSURE = Pattern.compile("p|pc|p_?c|.*(press|druck).*");
    private static final Pattern THRUST_NAME = Pattern.compile("f|.*(thrust|load|force|weight|cell|scale).*");
    private static final Pattern PLAIN_NAME = Pattern.compile("[\\p{L}#][\\p{L}\\p{N} _.#-]{0,30}");
    private static final Pattern WHOLE = Pattern.compile("[-+]?\\d+");

    /** A reading of a converter is hardly below this. */
    private static final double LEAST_COUNTS = 100;

    /**
     * What is wrong, with the lines to write.
     *
     * @return with the first rows as what was found
     */
    Problem problem(String what) {
        List<String> lines = lines();
        return new Problem(
                file,
                line,
                "",
                what,
                shown(),
                headless() ? "which column is what, and its unit" : "a time and a pressure, each with its unit",
                lines.isEmpty()
                        ? "name the columns below trace: in campaign.yaml, as   pressure: \"heading [bar]\""
                        : "write below trace: in campaign.yaml\n" + String.join("\n", lines));
    }

    private boolean headless() {
        return headings.stream().allMatch(heading -> heading.name().matches("column \\d+"));
    }

    private String shown() {
        if (rows.isEmpty()) {
            return headings.stream().map(TraceHeading::written).collect(Collectors.joining(" | "));
        }
        List<String> columns = IntStream.range(0, Math.min(COLUMNS_SHOWN, headings.size()))
                .mapToObj(i -> headings.get(i).written() + ": "
                        + rows.stream()
                                .limit(SHOWN)
                                .map(row -> i < row.size() ? row.get(i) : "")
                                .collect(Collectors.joining(", ")))
                .toList();
        return String.join(" | ", columns) + (headings.size() > COLUMNS_SHOWN ? " | …" : "");
    }

    /** The lines that are missing below trace:. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        OptionalInt time = time();
        if (settings.time().isEmpty() && settings.interval().isEmpty() && !timeIsClear()) {
            lines.add(
                    time.isPresent() && !counts(time.getAsInt())
                            ? entry("time", time.getAsInt(), "ms", "[s], [us]")
                            : SAMPLING
                                    + (headless() && time.isPresent()
                                            ? ", or   time: \"" + called(time.getAsInt()) + " [ms]\""
                                            : ""));
        }
        boolean clear = Stream.of(Dimension.PRESSURE, Dimension.FORCE)
                .anyMatch(dimension -> headings.stream().anyMatch(heading -> heading.hasDimension(dimension)));
        if (!clear
                && settings.calibration().isEmpty()
                && settings.pressure().isEmpty()
                && settings.thrust().isEmpty()) {
            reading(time).ifPresent(column -> reading(column, lines));
        }
        return lines;
    }

    private void reading(int column, List<String> lines) {
        TraceHeading heading = headings.get(column);
        Optional<String> electric = Stream.of(Dimension.VOLTAGE, Dimension.CURRENT, Dimension.COUNT)
                .filter(heading::hasDimension)
                .map(dimension -> heading.unit().orElseThrow().unit().symbol())
                .findFirst();
        boolean raw = electric.isEmpty() && heading.unit().isEmpty() && isRaw(column);
        if (raw) {
            lines.add("pressure: \"%s [counts]\"".formatted(called(column)));
        }
        if (raw || electric.isPresent()) {
            lines.add(calibration(electric.orElse("counts")));
        } else if (THRUST_NAME.matcher(folded(column)).matches()) {
            lines.add(entry("thrust", column, "N", "[kgf], [lbf]"));
        } else {
            lines.add(entry("pressure", column, "bar", "[psi], [MPa]"));
        }
    }

    private static String calibration(String unit) {
        String pairs = switch (unit) {
            case "V" -> "0.50 V: 0 bar, 4.50 V: 100 bar";
            case "mV" -> "500 mV: 0 bar, 4500 mV: 100 bar";
            case "mA" -> "4 mA: 0 bar, 20 mA: 100 bar";
            case "count", "counts" -> "102 counts: 0 bar, 921 counts: 100 bar";
            default -> "0 " + unit + ": 0 bar, 1 " + unit + ": 100 bar";
        };
        return "calibration: {" + pairs + "}  # yours";
    }

    private String entry(String role, int column, String unit, String others) {
        return "%s: \"%s [%s]\"  # or %s".formatted(role, called(column), unit, others);
    }

    private String called(int column) {
        String name = headings.get(column).name();
        long alike = headings.stream().filter(heading -> heading.isCalled(name)).count();
        return PLAIN_NAME.matcher(name).matches() && alike == 1 ? name : "column " + (column + 1);
    }

    private boolean timeIsClear() {
        return headings.stream().anyMatch(heading -> heading.hasDimension(Dimension.TIME))
                || !rows.isEmpty() && rows.get(0).stream().anyMatch(ClockTime::isStamp);
    }

    /** The column of times or of numbers of samples: by its name, else the first one that rises throughout. */
    OptionalInt time() {
        OptionalInt named = IntStream.range(0, headings.size())
                .filter(i -> ColumnChoice.TIME_NAMES.contains(folded(i)) || SAMPLE_NAMES.contains(folded(i)))
                .findFirst();
        return named.isPresent() || headings.size() < 2
                ? named
                : IntStream.range(0, headings.size()).filter(this::rises).findFirst();
    }

    private boolean rises(int column) {
        double[] steps = steps(column);
        return steps.length > 1 && Arrays.stream(steps).allMatch(step -> step > 0);
    }

    /** The column that is most likely the reading: by its unit or its name, else the first beside the time. */
    private Optional<Integer> reading(OptionalInt time) {
        List<Integer> others = IntStream.range(0, headings.size())
                .filter(i -> i != time.orElse(-1) && !headings.get(i).hasDimension(Dimension.TIME))
                .filter(i -> rows.isEmpty() || !Double.isNaN(number(rows.get(0), i)))
                .boxed()
                .toList();
        return others.stream()
                .filter(i -> headings.get(i).unit().isPresent()
                        || PRESSURE_NAME.matcher(folded(i)).matches())
                .findFirst()
                .or(() -> others.stream().findFirst());
    }

    /** Whether a column of times holds numbers of samples: they rise by one. */
    boolean counts(int column) {
        if (ColumnChoice.TIME_NAMES.contains(folded(column))) {
            return false;
        }
        double[] steps = steps(column);
        return SAMPLE_NAMES.contains(folded(column))
                || steps.length > 1 && Arrays.stream(steps).allMatch(step -> step == 1);
    }

    private boolean isRaw(int column) {
        return !rows.isEmpty()
                && !CERTAIN_PRESSURE.matcher(folded(column)).matches()
                && rows.stream()
                        .allMatch(row -> column < row.size()
                                && WHOLE.matcher(row.get(column)).matches())
                && rows.stream().mapToDouble(row -> number(row, column)).max().orElse(0) >= LEAST_COUNTS;
    }

    private double[] steps(int column) {
        return IntStream.range(1, rows.size())
                .mapToDouble(i -> number(rows.get(i), column) - number(rows.get(i - 1), column))
                .toArray();
    }

    private static double number(List<String> row, int column) {
        String cell = column < row.size() ? row.get(column).replace(',', '.') : "";
        return CellText.isNumber(cell, false) ? Double.parseDouble(cell) : Double.NaN;
    }

    private String folded(int column) {
        return TraceHeading.fold(headings.get(column).name()).toLowerCase(Locale.ROOT);
    }
}
