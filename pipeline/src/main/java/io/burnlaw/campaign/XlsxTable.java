package io.burnlaw.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a table from the first sheet of a workbook. */
final class XlsxTable {

    private XlsxTable() {}

    /**
     * Reads a table.
     *
     * @param file     for messages
     * @param bytes    of the workbook
     * @param problems where what is wrong is added
     * @return the table; empty where there is none
     */
    static Optional<TableText> read(String file, byte[] bytes, List<Problem> problems) {
        Optional<List<Workbook.SheetRow>> sheet = Workbook.firstSheet(bytes, TableText.MOST_ROWS);
        if (sheet.isEmpty()) {
            problems.add(new Problem(
                    file,
                    0,
                    "",
                    "this is no workbook, or too large a one",
                    "",
                    "a workbook with the table on its first sheet",
                    "save it again as .xlsx, or as CSV"));
            return Optional.empty();
        }
        List<Workbook.SheetRow> rows = sheet.get().stream()
                .filter(row -> !row.cells().get(0).startsWith("#"))
                .toList();
        if (rows.isEmpty()) {
            problems.add(new Problem(
                    file, 0, "", "the first sheet is empty", "", "a row of headings, and rows below it", "fill it in"));
            return Optional.empty();
        }
        if (rows.size() > TableText.MOST_ROWS) {
            problems.add(CsvTable.tooManyRows(file));
            return Optional.empty();
        }
        Workbook.SheetRow headings = rows.get(0);
        List<TableText.Line> lines = new ArrayList<>();
        for (Workbook.SheetRow row : rows.subList(1, rows.size())) {
            lines.add(new TableText.Line(
                    row.number(), fitted(row.cells(), headings.cells().size())));
        }
        return Optional.of(new TableText(
                file,
                headings.number(),
                headings.cells(),
                lines,
                List.of("%s: the first sheet was read.".formatted(file))));
    }

    /** A sheet stores no empty cells at the end of a row. */
    private static List<String> fitted(List<String> cells, int width) {
        List<String> fitted = new ArrayList<>(cells);
        while (fitted.size() < width) {
            fitted.add("");
        }
        while (fitted.size() > width && fitted.get(fitted.size() - 1).isEmpty()) {
            fitted.remove(fitted.size() - 1);
        }
        return fitted;
    }
}
