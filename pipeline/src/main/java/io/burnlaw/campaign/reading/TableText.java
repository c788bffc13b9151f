package io.burnlaw.campaign.reading;

import java.util.List;

/**
 * A table as it was written, not yet understood.
 *
 * @param file        path below the campaign folder
 * @param headingLine line of the headings
 * @param lines       the rows below, without empty ones
 * @param notes       what was guessed, as sentences
 */
record TableText(String file, int headingLine, List<String> headings, List<Line> lines, List<String> notes) {

    /** More rows than these are no log that somebody wrote. */
    static final int MOST_ROWS = 200_000;

    TableText {
        headings = List.copyOf(headings);
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /**
     * One row.
     *
     * @param line  of the file on which it begins
     * @param cells as written, without blanks around them
     */
    record Line(int line, List<String> cells) {}
}
