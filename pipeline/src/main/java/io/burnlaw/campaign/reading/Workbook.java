package io.burnlaw.campaign.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;

/** The first sheet of a workbook of Office Open XML (ECMA-376), as text. Formulas give the value that was saved. */
public final class Workbook {

    /** Unpacked parts are never larger together: a small file can hold a very large one. */
    private static final long MOST_UNPACKED = 256L << 20;

    private static final int MOST_COLUMNS = 1000;

    private Workbook() {}

    /**
     * One row of the sheet.
     *
     * @param number as the spreadsheet shows it
     * @param cells  from the first column, numbers with a decimal point
     */
    public record SheetRow(int number, List<String> cells) {
        public SheetRow {
            cells = List.copyOf(cells);
        }
    }

    /**
     * Reads the first sheet.
     *
     * @param most rows that are read at most; the caller tells where there are more
     * @return its rows without empty ones, in order; empty where the bytes are no workbook, or too large a one
     */
    public static Optional<List<SheetRow>> firstSheet(byte[] bytes, int most) {
        try {
            if (!isBounded(bytes)) {
                return Optional.empty();
            }
            try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes));
                    Stream<Row> rows = workbook.getFirstSheet().openStream()) {
                return Optional.of(rows.map(Workbook::row)
                        .filter(row -> row.cells().stream().anyMatch(cell -> !cell.isEmpty()))
                        .limit(most + 1L)
                        .toList());
            }
        } catch (IOException | ExcelReaderException e) {
            return Optional.empty();
        } catch (RuntimeException e) {
            // The library promises no exceptions for damaged sheets: it has thrown several kinds for them.
            return Optional.empty();
        }
    }

    private static boolean isBounded(byte[] bytes) throws IOException {
        long total = 0;
        byte[] sink = new byte[1 << 16];
        try (ZipInputStream parts = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            ZipEntry part = parts.getNextEntry();
            if (part == null) {
                return false;
            }
            for (; part != null; part = parts.getNextEntry()) {
                for (int read = parts.read(sink); read >= 0; read = parts.read(sink)) {
                    total += read;
                    if (total > MOST_UNPACKED) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private static SheetRow row(Row row) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < Math.min(row.getCellCount(), MOST_COLUMNS); i++) {
            cells.add(row.getOptionalCell(i).map(Workbook::text).orElse(""));
        }
        return new SheetRow(row.getRowNum(), cells);
    }

    private static String text(Cell cell) {
        if (cell.getValue() instanceof BigDecimal number) {
            return number.scale() < -300 || number.precision() > 300 ? "" : number.toPlainString();
        }
        boolean isFormula = cell.getType() == CellType.FORMULA;
        String text = isFormula ? cell.getRawValue() : String.valueOf(cell.getText());
        return text == null ? "" : text.strip();
    }
}
