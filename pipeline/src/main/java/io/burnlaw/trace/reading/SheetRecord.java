package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Workbook;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** A record on the first sheet of a workbook: its cells become text with tabs between them. */
final class SheetRecord {

    /** A sheet has no more rows. */
    private static final int MOST_ROWS = 1 << 20;

    private SheetRecord() {}

    static InputStream text(String file, byte[] bytes) throws Refusal {
        Optional<List<Workbook.SheetRow>> rows = Workbook.firstSheet(bytes, MOST_ROWS);
        if (rows.isEmpty()) {
            throw Refusal.of(
                    file,
                    0,
                    "this is no workbook, or too large a one",
                    "a workbook with the record on its first sheet",
                    "export the record as text");
        }
        // A remark in one row only leaves the others shorter: a table has one width.
        int width =
                rows.get().stream().mapToInt(row -> row.cells().size()).max().orElse(0);
        StringBuilder text = new StringBuilder();
        int line = 1;
        for (Workbook.SheetRow row : rows.get()) {
            for (; line < row.number(); line++) {
                text.append('\n');
            }
            text.append(row.cells().stream()
                    .map(cell -> cell.replaceAll("[\\t\\r\\n]", " "))
                    .collect(Collectors.joining("\t")));
            if (row.cells().size() > 1) {
                text.append("\t".repeat(width - row.cells().size()));
            }
        }
        return new ByteArrayInputStream(text.append('\n').toString().getBytes(StandardCharsets.UTF_8));
    }
}
