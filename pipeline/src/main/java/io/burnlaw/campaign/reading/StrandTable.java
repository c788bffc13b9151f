package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Strand;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads strands.csv: strands burnt in a vessel, each with its record. */
final class StrandTable {

    private StrandTable() {}

    static Rows<Strand> read(TableText table, RowContext context, List<Problem> problems) {
        TableColumns columns = TableColumns.of(table, columns(), problems);
        context.names(columns);
        return Rows.of(
                columns,
                context,
                "strand",
                (row, id, formulation) -> strand(row, id, formulation, table.file(), context, problems));
    }

    private static Optional<Strand> strand(
            TableRow row, String id, String formulation, String file, RowContext context, List<Problem> problems) {
        Optional<String> setAside = row.setAside();
        row.required("trace");
        String trace = context.trace(row, id, setAside).orElse("");
        row.required("length");
        Optional<Measured> length = row.length("length");
        TraceSettings settings = context.settings(row);
        TraceColumns.requireKind(file, row.line(), settings, problems);
        return length.map(value -> new Strand(
                id,
                formulation,
                trace,
                value,
                wireTimes(row),
                row.temperature("temperature"),
                context.ambientPressure(row),
                setAside,
                row.text("note"),
                settings,
                row.line()));
    }

    static List<Column> columns() {
        List<Column> columns = new ArrayList<>(List.of(
                Column.text("strand").needed(),
                Column.text("formulation").needed(),
                Column.text("batch"),
                Column.text("trace").needed(),
                Column.of("length", Dimension.LENGTH).needed(),
                Column.of("wire_times", Dimension.TIME),
                Column.of("temperature", Dimension.TEMPERATURE),
                Column.of("ambient_pressure", Dimension.PRESSURE),
                Column.text("use"),
                Column.text("note")));
        columns.addAll(TraceColumns.ALL);
        return columns;
    }

    /** {@code 1.20; 3.45}: one time for each wire, at least two, rising. */
    private static List<Double> wireTimes(TableRow row) {
        List<Double> times = new ArrayList<>();
        for (String part : row.text("wire_times").orElse("").split("[;/|]")) {
            if (!part.isBlank()) {
                row.quantity("wire_times", part.strip()).ifPresent(time -> times.add(time.value()));
            }
        }
        boolean rising = times.size() != 1;
        for (int i = 1; i < times.size(); i++) {
            rising &= times.get(i) > times.get(i - 1);
        }
        if (!rising) {
            row.wrong(
                    "wire_times",
                    "these cannot be the times of the wires",
                    "two rising times at least",
                    "write   1.20; 3.45");
        }
        return times;
    }
}
