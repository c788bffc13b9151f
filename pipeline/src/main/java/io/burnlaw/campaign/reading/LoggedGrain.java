package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.GrainKind;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Spelling;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/** The grain of a row of the firing log: kind, segments, dimensions, or its table of surface and web. */
final class LoggedGrain {

    private static final int MOST_SEGMENTS = 100;

    private final RowContext context;
    private final TableColumns columns;
    private final Map<String, SurfaceFile> surfaces = new HashMap<>();
    private final List<InputFile> inputs;

    /** Columns that give a dimension of one segment, such as {@code core_diameter_2}. */
    private final List<String> ofSegments;

    LoggedGrain(RowContext context, TableColumns columns, List<InputFile> inputs) {
        this.context = context;
        this.columns = columns;
        this.inputs = inputs;
        this.ofSegments = columns.columns().stream()
                .map(column -> column.column().name())
                .filter(name -> FiringLog.DIMENSIONS.stream().anyMatch(d -> name.matches(d + "_\\d+")))
                .toList();
    }

    /** {@return tables of surfaces that were read so far} */
    /** {@return the grain; empty where the row does not say it, and the row has the problems} */
    Optional<GrainDescription> of(TableRow row) {
        String word = row.required("grain");
        Optional<GrainKind> kind = Choice.of(GrainKind.class, word.strip().replaceFirst("(?i)[\\s_-]+grains?$", ""));
        if (kind.isEmpty()) {
            if (!word.isEmpty()) {
                row.wrong(
                        "grain",
                        "there is no grain with this name",
                        word,
                        "one of " + String.join(", ", GrainKind.words()),
                        Spelling.mend(word, GrainKind.words(), "describe it by a surface_table"));
            }
            return Optional.empty();
        }
        OptionalInt stated = row.count("segments", 1, MOST_SEGMENTS);
        Map<String, Measured> dimensions = new TreeMap<>();
        int segments = Math.max(stated.orElse(1), 1);
        for (String name : FiringLog.DIMENSIONS) {
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
                    stated.getAsInt() + " values",
                    "correct one of the two");
        }
        if (parts.size() > MOST_SEGMENTS || parts.stream().anyMatch(part -> !(part.value() > 0))) {
            row.wrong(
                    name,
                    "these values cannot be segments",
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
                        "check whether the two were exchanged");
                return;
            }
        }
    }
}
