package io.burnlaw.trace.reading;

import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.trace.reading.FirstLines.Run;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How a record of text is laid out, found by looking at its beginning.
 *
 * @param separator    between the cells; {@link Convention#BLANKS} for runs of spaces
 * @param decimalComma whether numbers have a decimal comma
 * @param headings     one for each column, with the unit of the row of units where there is one
 * @param firstLine    number of the first line with numbers, from 1
 * @param firstByte    where that line begins
 * @param rows         the first rows of numbers as written
 * @param notes        what was guessed, as sentences
 */
record RecordLayout(
        char separator,
        boolean decimalComma,
        List<TraceHeading> headings,
        int firstLine,
        int firstByte,
        List<List<String>> rows,
        List<String> notes) {

    private static final int LOOKED_AT = 1 << 16;
    private static final int LINES_LOOKED_AT = 2000;

    /** So many rows tell what a column holds. */
    private static final int ROWS_KEPT = 50;

    /**
     * Looks at the beginning of a record.
     *
     * @param size  how many of them
     * @throws Refusal where there are no rows of numbers
     */
    static RecordLayout of(String file, byte[] bytes, int size) throws Refusal {
        FirstLines start = FirstLines.of(bytes, Math.min(size, LOOKED_AT), size <= LOOKED_AT, 2 * FirstLines.MANY);
        List<Run> settled =
                runs(start).filter(run -> run.length() >= FirstLines.MANY).toList();
        if (settled.size() == 1) {
            return around(file, start, start.upward(settled.get(0)));
        }
        FirstLines lines = FirstLines.of(bytes, Math.min(size, LOOKED_AT), size <= LOOKED_AT, LINES_LOOKED_AT);
        Run best = runs(lines).reduce((a, b) -> b.length() > a.length() ? b : a).orElseThrow();
        Run single = Convention.ALL.stream()
                .map(convention -> lines.longest(convention, 1))
                .filter(run -> run.width() == 1)
                .reduce((a, b) -> b.length() > a.length() ? b : a)
                .orElse(best);
        Run run = single.length() > FirstLines.PREAMBLE_RATIO * best.length() || isDecimalComma(lines, best)
                ? single
                : best;
        if (run.length() == 0) {
            throw Refusal.of(
                    file,
                    0,
                    "the file has no rows of numbers",
                    "a heading row, and below it a time and a pressure in each row",
                    "export the record again as text");
        }
        return around(file, lines, lines.upward(run));
    }

    /**
     * Whether what seem to be two whole numbers with a comma between them is one with a decimal comma: it is where no
     * two headings are above, and the first does not rise as a time or a number of samples would.
     */
    private static boolean isDecimalComma(FirstLines lines, Run run) {
        if (run.convention().separator() != ',' || run.width() != 2) {
            return false;
        }
        int above = lines.previous(run.first(), false);
        if (above >= 0 && lines.decoded(above).contains(",")) {
            return false;
        }
        List<List<String>> rows = rows(lines, run);
        boolean whole = rows.stream()
                .allMatch(row -> row.get(0).matches("[-+]?\\d+") && row.get(1).matches("\\d+"));
        return whole
                && IntStream.range(1, rows.size())
                        .anyMatch(i -> Double.parseDouble(rows.get(i).get(0))
                                <= Double.parseDouble(rows.get(i - 1).get(0)));
    }

    private static List<List<String>> rows(FirstLines start, Run run) {
        return start.lines().subList(run.first(), start.lines().size()).stream()
                .map(line -> run.convention().cells(line.text()))
                .filter(cells -> cells.size() == run.width())
                .limit(ROWS_KEPT)
                .toList();
    }

    private static Stream<Run> runs(FirstLines lines) {
        return Convention.ALL.stream().map(convention -> lines.longest(convention, 2));
    }

    private static RecordLayout around(String file, FirstLines lines, Run run) throws Refusal {
        FirstLines.Line first = lines.lines().get(run.first());
        List<String> notes = new ArrayList<>();
        List<TraceHeading> headings = new HeadingRow(file, lines, run).headings(notes);
        String between = switch (run.convention().separator()) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            case ',' -> "comma";
            default -> "blanks";
        };
        notes.add(file + ": " + (run.width() == 1 ? "one number in each row" : between + " between the cells")
                + ", decimal "
                + (run.convention().decimalComma() ? "comma" : "point")
                + ", first row of numbers on line " + first.number() + ".");
        return new RecordLayout(
                run.convention().separator(),
                run.convention().decimalComma(),
                headings,
                first.number(),
                first.from(),
                rows(lines, run),
                notes);
    }

    /**
     * The headings above the first row of numbers, with the units of a row of their own where there is one.
     *
     * @param run the rows of numbers
     */
    private record HeadingRow(String file, FirstLines start, FirstLines.Run run) {

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
                    notes.add("%s: the headings are in the comment on line %d."
                            .formatted(file, start.lines().get(comment).number()));
                }
            }
            if (run.convention().separator() == ',' && texts.size() * 2 == run.width()) {
                throw Refusal.of(
                        file,
                        start.lines().get(run.first()).number(),
                        "there are twice as many cells as headings: a comma seems to be used both between and inside numbers",
                        "one character between the cells, another inside numbers",
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
}
