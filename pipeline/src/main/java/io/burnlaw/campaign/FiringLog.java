package io.burnlaw.campaign;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Campaign.UnusableRow;
import io.burnlaw.campaign.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** Reads the firing log. */
final class FiringLog {

    static final List<String> DIMENSIONS =
            List.of("outer_diameter", "core_diameter", "rod_diameter", "segment_length", "web");

    private static final int MOST_SEGMENTS = 100;

    private final RowContext context;
    private final TableColumns columns;
    private final List<Problem> problems;
    private final Map<String, SurfaceFile> surfaces = new HashMap<>();
    private final List<InputFile> inputs = new ArrayList<>();

    /** Columns that give a dimension of one segment, such as {@code core_diameter_2}. */
    private final List<String> ofSegments;

    private FiringLog(RowContext context, TableColumns columns, List<Problem> problems) {
        this.context = context;
        this.columns = columns;
        this.problems = problems;
        this.ofSegments = columns.columns().stream()
                .map(column -> column.column().name())
                .filter(name -> DIMENSIONS.stream().anyMatch(d -> name.matches(d + "_\\d+")))
                .toList();
    }

    /** The rows that can be used, those that cannot, and what was read beside the log. */
    record Rows(List<Firing> firings, List<UnusableRow> unusable, List<InputFile> inputs, List<String> notes) {}

    static Rows read(TableText table, RowContext context, List<Problem> problems) {
        TableColumns columns = TableColumns.of(table, columns(), problems);
        FiringLog log = new FiringLog(context, columns, problems);
        context.names(columns);
        List<Firing> firings = new ArrayList<>();
        List<UnusableRow> unusable = new ArrayList<>();
        for (TableText.Line line : columns.lines()) {
            TableRow row = new TableRow(columns, line);
            String id = context.id(row, "firing");
            String formulation = context.formulation(row);
            context.batch(row, id);
            Optional<Firing> firing = log.firing(row, id, formulation);
            if (row.problems().isEmpty()) {
                firing.ifPresent(firings::add);
            } else {
                unusable.add(new UnusableRow(id, formulation, row.problems()));
            }
        }
        List<String> notes = new ArrayList<>(columns.tableNotes());
        notes.addAll(columns.notes());
        return new Rows(CaliperResolution.of(firings), unusable, log.inputs, notes);
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
        Optional<GrainDescription> grain = grain(row);
        row.required("throat_diameter");
        Optional<Measured> throat = row.length("throat_diameter");
        Optional<Measured> exit = row.length("exit_diameter");
        if (throat.isPresent()
                && exit.isPresent()
                && exit.get().value() < throat.get().value()) {
            row.wrong(
                    "exit_diameter",
                    "the exit is narrower than the throat",
                    row.text("exit_diameter").orElse(""),
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
                    row.text("throat_diameter").orElse(""),
                    "a diameter well below the outer diameter",
                    LikelyCause.ofThroat(throat.value(), widest).orElse("look at the unit"));
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
                    row.text("propellant_mass").orElse(""),
                    "about %.3g g by its dimensions".formatted(1000 * expected),
                    LikelyCause.ofMass(mass.get().value() / expected, grain.segments())
                            .or(() -> LikelyCause.ofOuterDiameter(mass.get().value() / (density * (4 * whole - core))))
                            .orElse("look at g against kg, then at the number of segments"));
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

    private Optional<GrainDescription> grain(TableRow row) {
        String word = row.required("grain");
        Optional<GrainKind> kind = Choice.of(GrainKind.class, word.strip().replaceFirst("(?i)[\\s_-]+grains?$", ""));
        if (kind.isEmpty()) {
            if (!word.isEmpty()) {
                row.wrong(
                        "grain",
                        "no grain has this name",
                        word,
                        "one of " + String.join(", ", GrainKind.words()),
                        io.burnlaw.quantity.Spelling.nearest(word, GrainKind.words())
                                .map(near -> "write   " + near)
                                .orElse("describe it by a surface_table"));
            }
            return Optional.empty();
        }
        OptionalInt stated = row.count("segments", 1, MOST_SEGMENTS);
        Map<String, Measured> dimensions = new TreeMap<>();
        int segments = Math.max(stated.orElse(1), 1);
        for (String name : DIMENSIONS) {
            segments = Math.max(segments, dimension(row, name, stated, dimensions));
        }
        numbered(row, dimensions);
        boolean several = segments > 1;
        for (String name : kind.get().needs()) {
            if (!dimensions.containsKey(name) && !(several && hasEach(dimensions, name, segments))) {
                needed(row, kind.get(), name);
            }
        }
        below(row, "core_diameter", "outer_diameter", kind.get(), dimensions, segments);
        below(row, "rod_diameter", "core_diameter", kind.get(), dimensions, segments);
        OptionalInt inhibited = row.count("inhibited_ends", 0, 2 * segments);
        return described(row, kind.get(), segments, inhibited.orElse(0), dimensions);
    }

    private Optional<GrainDescription> described(
            TableRow row, GrainKind kind, int segments, int inhibited, Map<String, Measured> dimensions) {
        if (kind != GrainKind.TABLE) {
            return Optional.of(
                    new GrainDescription(kind.word(), segments, inhibited, dimensions, List.of(), Optional.empty()));
        }
        String path = row.required("surface_table");
        if (columns.column("surface_table").isEmpty()) {
            row.wrong(
                    "surface_table",
                    "a grain of this kind needs a surface table",
                    "",
                    "a column surface_table with the path of a table of web and area",
                    "add the column");
        }
        if (path.isEmpty()) {
            return Optional.empty();
        }
        SurfaceFile surface = surfaces.computeIfAbsent(path, p -> SurfaceFile.read(p, context.folder(), inputs));
        surface.problems().forEach(row.problems()::add);
        surface.notFound()
                .ifPresent(missing ->
                        row.wrong("surface_table", missing.what(), path, missing.expected(), missing.mend()));
        return Optional.of(
                new GrainDescription(kind.word(), segments, dimensions, surface.points(), Optional.of(path)));
    }

    /** Puts a dimension into the map; several in one cell are those of the segments. Gives the number of segments. */
    private int dimension(TableRow row, String name, OptionalInt stated, Map<String, Measured> dimensions) {
        List<Measured> parts = columns.column(name).isPresent() ? row.sum(name) : List.of();
        if (parts.size() < 2) {
            row.length(name).ifPresent(value -> dimensions.put(name, value));
            return 1;
        }
        if (stated.isPresent() && stated.getAsInt() != parts.size()) {
            row.wrong(
                    name,
                    "the cell has another number of segments than the column segments",
                    row.text(name).orElse(""),
                    stated.getAsInt() + " values",
                    "correct one of the two");
        }
        if (parts.size() > MOST_SEGMENTS || parts.stream().anyMatch(part -> !(part.value() > 0))) {
            row.wrong(
                    name,
                    "these cannot be the segments",
                    row.text(name).orElse(""),
                    "at most " + MOST_SEGMENTS + " values above zero",
                    "correct them");
        }
        for (int i = 0; i < parts.size(); i++) {
            dimensions.put(name + "_" + (i + 1), parts.get(i));
        }
        return parts.size();
    }

    private void numbered(TableRow row, Map<String, Measured> dimensions) {
        for (String name : ofSegments) {
            row.length(name).ifPresent(value -> dimensions.put(name, value));
        }
    }

    private static boolean hasEach(Map<String, Measured> dimensions, String name, int segments) {
        for (int i = 1; i <= segments; i++) {
            if (!dimensions.containsKey(name + "_" + i)) {
                return false;
            }
        }
        return true;
    }

    private void needed(TableRow row, GrainKind kind, String name) {
        if (columns.isFaulty(name) || row.text(name).isPresent()) {
            return;
        }
        row.wrong(
                name,
                "a grain of the kind " + kind.word() + " needs this dimension",
                "",
                "a length above zero",
                columns.column(name).isPresent()
                        ? "fill the cell in"
                        : "add a column   " + Column.of(name, Dimension.LENGTH).heading());
    }

    private void below(
            TableRow row, String inner, String outer, GrainKind kind, Map<String, Measured> dimensions, int segments) {
        if (!kind.needs().contains(inner)) {
            return;
        }
        for (int i = 1; i <= segments; i++) {
            Measured small = dimensions.getOrDefault(inner + "_" + i, dimensions.get(inner));
            Measured large = dimensions.getOrDefault(outer + "_" + i, dimensions.get(outer));
            if (small != null && large != null && !(small.value() < large.value())) {
                row.wrong(
                        inner,
                        inner + " is not below " + outer,
                        row.text(inner).orElse("") + " against "
                                + row.text(outer).orElse(""),
                        "a value below " + outer,
                        "look whether the two were exchanged");
                return;
            }
        }
    }
}
