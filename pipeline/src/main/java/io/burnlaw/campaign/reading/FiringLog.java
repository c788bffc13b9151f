package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.GrainKind;
import io.burnlaw.campaign.LikelyCause;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;

/** Reads the firing log. */
final class FiringLog {

    static final List<String> DIMENSIONS =
            List.of("outer_diameter", "core_diameter", "rod_diameter", "segment_length", "web");

    private final RowContext context;
    private final TableColumns columns;
    private final List<Problem> problems;
    private final LoggedGrain grains;

    private FiringLog(RowContext context, TableColumns columns, List<InputFile> inputs, List<Problem> problems) {
        this.context = context;
        this.columns = columns;
        this.problems = problems;
        this.grains = new LoggedGrain(context, columns, inputs);
    }

    /** The rows of a log; files that it names go to the inputs. */
    static Rows<Firing> read(TableText table, RowContext context, List<InputFile> inputs, List<Problem> problems) {
        TableColumns columns = TableColumns.of(table, columns(), problems);
        FiringLog log = new FiringLog(context, columns, inputs, problems);
        context.names(columns);
        Rows<Firing> rows = Rows.of(columns, context, "firing", log::firing);
        return new Rows<>(CaliperResolution.of(rows.usable()), rows.unusable(), rows.notes());
    }

    static List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("firing").needed());
        columns.add(Column.text("formulation").needed());
        columns.add(Column.text("batch"));
        columns.add(Column.text("trace"));
        columns.add(Column.of("burn_time", Dimension.TIME));
        columns.add(Column.text("grain").needed());
        columns.add(Column.text("segments"));
        columns.add(Column.text("inhibited_ends"));
        DIMENSIONS.forEach(name -> columns.add(Column.of(name, Dimension.LENGTH)));
        columns.add(Column.text("surface_table"));
        columns.add(Column.of("throat_diameter", Dimension.LENGTH).needed());
        columns.add(Column.of("throat_diameter_after", Dimension.LENGTH));
        columns.add(Column.of("exit_diameter", Dimension.LENGTH));
        columns.add(Column.of("propellant_mass", Dimension.MASS));
        columns.add(Column.of("igniter_mass", Dimension.MASS));
        columns.add(Column.of("grain_temperature", Dimension.TEMPERATURE));
        columns.add(Column.of("ambient_pressure", Dimension.PRESSURE));
        columns.add(Column.of("chamber_volume", Dimension.VOLUME));
        columns.add(Column.text("use"));
        columns.add(Column.text("note"));
        columns.addAll(TraceColumns.ALL);
        return columns;
    }

    private Optional<Firing> firing(TableRow row, String id, String formulation) {
        Optional<String> setAside = row.setAside();
        Optional<String> trace = context.trace(row, id, setAside);
        Optional<Measured> time = row.positive("burn_time");
        if (trace.isEmpty() && row.text("burn_time").isEmpty() && setAside.isEmpty()) {
            noRecord(row);
        }
        Optional<GrainDescription> grain = grains.of(row);
        row.required("throat_diameter");
        Optional<Measured> throat = row.length("throat_diameter");
        Optional<Measured> exit = row.length("exit_diameter");
        if (throat.isPresent()
                && exit.isPresent()
                && exit.get().value() < throat.get().value()) {
            row.wrong(
                    "exit_diameter",
                    "the exit is narrower than the throat",
                    "at least the throat diameter",
                    "measure both again");
        }
        TraceSettings settings = context.settings(row);
        if (trace.isPresent()) {
            TraceColumns.requireKind(columns.file(), row.line(), settings, problems);
        }
        Optional<Measured> after = row.length("throat_diameter_after");
        Optional<Measured> mass = row.positive("propellant_mass");
        Optional<Measured> volume = row.positive("chamber_volume");
        if (grain.isEmpty() || throat.isEmpty()) {
            return Optional.empty();
        }
        fitTogether(row, formulation, grain.get(), throat.get(), mass);
        return Optional.of(new Firing(
                id,
                formulation,
                trace,
                trace.isPresent() ? Optional.empty() : time,
                row.text("note").filter(FiringLog::tellsOfPulses).isPresent(),
                grain.get(),
                throat.get(),
                after,
                exit,
                mass,
                row.positive("igniter_mass")
                        .or(() -> context.head().hardware().igniterMass())
                        .map(context.head().hardware()::igniterGas),
                row.temperature("grain_temperature"),
                context.ambientPressure(row),
                volume,
                setAside,
                row.text("note"),
                settings,
                row.line()));
    }

    /** Says what cannot belong to one motor, whatever its propellant; grains may lie side by side. */
    private void fitTogether(
            TableRow row, String formulation, GrainDescription grain, Measured throat, Optional<Measured> mass) {
        double across = 0;
        double outside = 0;
        double cores = 0;
        double widest = 0;
        for (int i = 1; i <= grain.segments(); i++) {
            Optional<Measured> outer = of(grain, "outer_diameter", i);
            Optional<Measured> length = of(grain, "segment_length", i);
            if (outer.isEmpty() || length.isEmpty()) {
                return;
            }
            double face = circle(outer.get());
            widest = Math.max(widest, outer.get().value());
            across += face;
            outside += face * length.get().value();
            cores += of(grain, "core_diameter", i).map(FiringLog::circle).orElse(0.0)
                    * length.get().value();
        }
        boolean inTube = !grain.kind().equals(GrainKind.ROD.word());
        if (inTube && circle(throat) >= across) {
            row.wrong(
                    "throat_diameter",
                    "the throat is wider than the grain",
                    "a diameter well below the outer diameter",
                    LikelyCause.ofThroat(throat.value(), widest).orElse("check the unit"));
        }
        if (mass.isPresent()
                && Plausible.DENSITY
                        .doubt(Math.max(mass.get().value() / outside, 1000))
                        .isPresent()) {
            double density = context.head().formulations().stream()
                    .filter(known -> known.id().equals(formulation))
                    .flatMap(known -> known.density().stream())
                    .mapToDouble(Measured::value)
                    .findFirst()
                    .orElse(LikelyCause.USUAL_DENSITY);
            double whole = outside;
            double core = cores;
            double expected = density * (whole - core);
            row.wrong(
                    "propellant_mass",
                    "a grain of this size cannot weigh this much",
                    "about %.3g g by its dimensions".formatted(1000 * expected),
                    LikelyCause.ofMass(mass.get().value() / expected, grain.segments())
                            .or(() -> LikelyCause.ofOuterDiameter(mass.get().value() / (density * (4 * whole - core))))
                            .orElse("check g against kg, then the number of segments"));
        }
    }

    private static Optional<Measured> of(GrainDescription grain, String dimension, int segment) {
        return Optional.ofNullable(grain.dimensions()
                .getOrDefault(dimension + "_" + segment, grain.dimensions().get(dimension)));
    }

    private static double circle(Measured diameter) {
        return Math.PI / 4 * diameter.value() * diameter.value();
    }

    private void noRecord(TableRow row) {
        boolean column = columns.column("trace").isPresent();
        row.wrong(
                column ? "trace" : "burn_time",
                "there is neither a record nor a burn time",
                "",
                "the path of a record, or the time from ignition to burnout by video or stopwatch",
                columns.column("burn_time").isPresent()
                        ? "fill in one of the two"
                        : column
                                ? "fill it in, or add a column   burn_time [s]"
                                : "add a column   trace   or   burn_time [s]");
    }

    /** Words for separate pulses; "no chuffing" and the like are none. */
    private static final Pattern PULSES = Pattern.compile(
            "(?i)(?<!\\b(?:no|not|never|without|neither|nor)\\s{1,3}(?:any\\s{1,3})?)\\b(puls(e|ed|es|ing|ated|ating)|chuff(s|ed|ing)?)\\b");

    private static boolean tellsOfPulses(String note) {
        return PULSES.matcher(note).find();
    }

    /**
     * How finely the lengths of a log were read, where nobody stated it: lengths of one column that are all multiples
     * of 0.1, 0.5 or 1 mm (or of 1/16 or 1/32 in) were read in such steps, and each has the standard uncertainty of its
     * step over the root of 12 (JCGM 100:2008, 4.3.7 and F.2.2.1). Finer steps are below what is usual for calipers and
     * are left to that.
     */
    private static final class CaliperResolution {

        /** Coarse to fine [m]. */
        private static final double[] STEPS = {1e-3, 25.4e-3 / 16, 25.4e-3 / 32, 0.5e-3, 0.1e-3};

        /** With fewer readings, multiples of a step are no wonder. */
        private static final int FEWEST = 4;

        /** What a decimal number leaves [1]. */
        private static final double ROUNDING = 1e-6;

        private CaliperResolution() {}

        /**
         * Gives the lengths of firings the uncertainty of their reading, where none is stated.
         *
         * @param firings rows of one log
         * @return the same, in their order
         */
        static List<Firing> of(List<Firing> firings) {
            Map<String, List<Measured>> columns = new TreeMap<>();
            for (Firing firing : firings) {
                lengths(firing)
                        .forEach((name, value) -> columns.computeIfAbsent(name, n -> new ArrayList<>())
                                .add(value));
            }
            Map<String, Double> std = new TreeMap<>();
            columns.forEach((name, values) -> step(values).ifPresent(step -> std.put(name, step / Math.sqrt(12))));
            return std.isEmpty()
                    ? firings
                    : firings.stream().map(each -> read(each, std)).toList();
        }

        private static Map<String, Measured> lengths(Firing firing) {
            Map<String, Measured> lengths = new TreeMap<>(firing.grain().dimensions());
            lengths.put("throat_diameter", firing.throatDiameter());
            firing.throatDiameterAfter().ifPresent(value -> lengths.put("throat_diameter_after", value));
            firing.exitDiameter().ifPresent(value -> lengths.put("exit_diameter", value));
            return lengths;
        }

        /** The coarsest step of which all are multiples; readings that are all alike may be a drill or a mould. */
        private static Optional<Double> step(List<Measured> values) {
            boolean unstated = values.stream().allMatch(value -> value.std().isEmpty());
            if (!unstated
                    || values.stream().mapToDouble(Measured::value).distinct().count() < FEWEST) {
                return Optional.empty();
            }
            for (double step : STEPS) {
                if (values.stream().allMatch(value -> multiple(value.value(), step))) {
                    return Optional.of(step);
                }
            }
            return Optional.empty();
        }

        private static boolean multiple(double value, double step) {
            double count = value / step;
            return Math.abs(count - Math.rint(count)) < ROUNDING * Math.max(1, count);
        }

        private static Firing read(Firing firing, Map<String, Double> std) {
            Function<Map.Entry<String, Measured>, Measured> with = length -> std.containsKey(length.getKey())
                    ? Measured.of(length.getValue().value(), std.get(length.getKey()))
                    : length.getValue();
            Map<String, Measured> dimensions = new TreeMap<>();
            firing.grain().dimensions().entrySet().forEach(each -> dimensions.put(each.getKey(), with.apply(each)));
            return firing.withLengths(
                    firing.grain().withDimensions(dimensions),
                    with.apply(Map.entry("throat_diameter", firing.throatDiameter())),
                    firing.throatDiameterAfter().map(value -> with.apply(Map.entry("throat_diameter_after", value))),
                    firing.exitDiameter().map(value -> with.apply(Map.entry("exit_diameter", value))));
        }
    }
}
