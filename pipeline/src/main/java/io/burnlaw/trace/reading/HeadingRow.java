package io.burnlaw.trace.reading;

import io.burnlaw.campaign.WrittenUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The headings above the first row of numbers, with the units of a row of their own where there is one.
 *
 * @param file  for messages
 * @param start of the record
 * @param run   the rows of numbers
 */
record HeadingRow(String file, FirstLines start, FirstLines.Run run) {

    /**
     * Reads them.
     *
     * @param notes where what was guessed is added
     * @return one for each column; by number where there are none
     * @throws Refusal where a comma seems to be both between and within numbers
     */
    List<TraceHeading> headings(List<String> notes) throws Refusal {
        int above = start.previous(run.first(), false);
        List<String> texts = above < 0 ? List.of() : cells(above);
        List<String> units = List.of();
        int further = above < 0 ? -1 : start.previous(above, false);
        boolean unitsOnly = texts.size() == run.width()
                && further >= 0
                && texts.stream()
                        .allMatch(text ->
                                text.isEmpty() || WrittenUnit.of(bare(text)).isPresent());
        if (unitsOnly && cells(further).size() == run.width()) {
            units = texts;
            texts = cells(further);
        }
        if (texts.size() != run.width()) {
            int comment = start.previous(run.first(), true);
            List<String> commented = comment < 0 ? List.of() : cells(comment);
            if (commented.size() == run.width()) {
                texts = commented;
                notes.add("%s: the headings stand in the comment on line %d."
                        .formatted(file, start.lines().get(comment).number()));
            }
        }
        if (run.convention().separator() == ',' && texts.size() * 2 == run.width()) {
            throw Refusal.of(
                    file,
                    start.lines().get(run.first()).number(),
                    "there are twice as many cells as headings: a comma seems to stand both between and within numbers",
                    "one sign between the cells, another within numbers",
                    "export with semicolons, or with decimal points");
        }
        if (texts.size() != run.width()) {
            notes.add("%s: there are no headings above the numbers.".formatted(file));
            return IntStream.rangeClosed(1, run.width())
                    .mapToObj(number -> new TraceHeading("column " + number, "column " + number, Optional.empty()))
                    .toList();
        }
        List<TraceHeading> headings = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            TraceHeading heading = TraceHeading.of(texts.get(i));
            headings.add(i < units.size() ? heading.withUnit(bare(units.get(i))) : heading);
        }
        return headings;
    }

    private static String bare(String unit) {
        return unit.strip().replaceAll("^[\\[(]|[\\])]$", "");
    }

    private List<String> cells(int line) {
        String text = start.decoded(line).strip();
        if (text.startsWith("#")) {
            text = text.replaceFirst("#+\\s*", "");
        }
        if (run.convention().separator() != Convention.BLANKS) {
            return fitted(
                    run.convention().cells(text),
                    run.convention().cells(start.lines().get(run.first()).text()));
        }
        for (String separator : List.of("\t+|\\s{2,}", "\\s+(?![\\[(])", "\\s+")) {
            List<String> cells = List.of(text.split(separator));
            if (cells.size() == run.width()) {
                return cells.stream().map(CellText::unquoted).toList();
            }
        }
        return List.of();
    }

    /** Separators at the end of the line may stand in the headings or in the rows only. */
    private List<String> fitted(List<String> cells, List<String> row) {
        int width = run.width();
        while (cells.size() > width && cells.get(cells.size() - 1).isEmpty()) {
            cells.remove(cells.size() - 1);
        }
        boolean emptyBehind =
                row.subList(Math.min(cells.size(), width), width).stream().allMatch(String::isEmpty);
        while (cells.size() < width && (emptyBehind || cells.size() == width - 1)) {
            cells.add("");
        }
        return cells;
    }
}
