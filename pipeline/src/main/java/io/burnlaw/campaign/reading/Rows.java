package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.UnusableRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The rows of a table that can be used, and those that cannot. */
record Rows<T>(List<T> usable, List<UnusableRow> unusable, List<String> notes) {

    /** Reads one row; what is wrong with it is said of the row. */
    @FunctionalInterface
    interface RowReader<T> {

        /** {@return empty where the row is not whole enough} */
        Optional<T> read(TableRow row, String id, String formulation);
    }

    static <T> Rows<T> none() {
        return new Rows<>(List.of(), List.of(), List.of());
    }

    static <T> Rows<T> of(TableColumns columns, RowContext context, String idColumn, RowReader<T> reader) {
        List<T> usable = new ArrayList<>();
        List<UnusableRow> unusable = new ArrayList<>();
        for (TableText.Line line : columns.lines()) {
            TableRow row = new TableRow(columns, line);
            String id = context.id(row, idColumn);
            String formulation = context.formulation(row);
            context.batch(row, id);
            Optional<T> read = reader.read(row, id, formulation);
            if (row.problems().isEmpty()) {
                read.ifPresent(usable::add);
            } else {
                unusable.add(new UnusableRow(id, formulation, row.problems()));
            }
        }
        List<String> notes = new ArrayList<>(columns.tableNotes());
        notes.addAll(columns.notes());
        return new Rows<>(usable, unusable, notes);
    }
}
