package io.burnlaw.trace.reading;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The beginning of a record of text, line by line, and where rows of numbers are in it. */
record FirstLines(byte[] bytes, List<Line> lines) {

    /** So many lines of numbers in a row are no preamble. */
    private static final int CERTAIN = 3;

    /** So many rows near the beginning that only one convention can read settle it. */
    static final int MANY = 100;

    /** So many times more rows than an earlier table of numbers has make that one a part of the preamble. */
    static final int PREAMBLE_RATIO = 4;

    private static final Charset OLDER = Charset.forName("windows-1252");

    /** A line of the beginning. */
    record Line(int number, int from, String text) {}

    /** Lines of numbers without a break, all with the same number of cells. */
    record Run(Convention convention, int first, int length, int width) {}

    static FirstLines of(byte[] bytes, int size, boolean complete, int most) {
        List<Line> lines = new ArrayList<>();
        boolean marked =
                size >= 3 && (bytes[0] & 0xFF) == 0xEF && (bytes[1] & 0xFF) == 0xBB && (bytes[2] & 0xFF) == 0xBF;
        int from = marked ? 3 : 0;
        int number = 1;
        for (int i = from; i < size && lines.size() < most; i++) {
            if (bytes[i] == '\n' || bytes[i] == '\r') {
                lines.add(new Line(number++, from, new String(bytes, from, i - from, StandardCharsets.ISO_8859_1)));
                i += bytes[i] == '\r' && i + 1 < size && bytes[i + 1] == '\n' ? 1 : 0;
                from = i + 1;
            }
        }
        if (complete && from < size && lines.size() < most) {
            lines.add(new Line(number, from, new String(bytes, from, size - from, StandardCharsets.ISO_8859_1)));
        }
        return new FirstLines(bytes, lines);
    }

    /**
     * The first run that is long enough; one that is much longer than those before it, which are a part of the preamble;
     * or else the longest.
     */
    Run longest(Convention convention, int narrowest) {
        Run best = new Run(convention, 0, 0, 0);
        Run run = best;
        for (int i = 0; i < lines.size(); i++) {
            String text = lines.get(i).text();
            if (text.isBlank() || text.startsWith("#")) {
                continue;
            }
            Convention.Kind kind = convention.kind(text, narrowest);
            if (run.length() > 0 && kind.width() == run.width() && kind.goesOn()) {
                run = new Run(convention, run.first(), run.length() + 1, run.width());
            } else {
                if (best.length() >= MANY) {
                    return best;
                }
                run = kind.begins() ? new Run(convention, i, 1, kind.width()) : new Run(convention, 0, 0, 0);
            }
            boolean sameStart = run.first() == best.first();
            boolean longer = best.length() < CERTAIN
                    ? run.length() > best.length()
                    : run.length() > PREAMBLE_RATIO * best.length();
            best = sameStart && run.length() > best.length() || longer ? run : best;
        }
        return best;
    }

    /** A row with a wrong cell may stand above: it belongs to the record, and will be named. */
    Run upward(Run run) {
        int above = previous(run.first(), false);
        if (above < 0) {
            return run;
        }
        Convention.Kind kind = run.convention().kind(lines.get(above).text(), 2);
        return kind.width() == run.width() && kind.hasNumber() && run.width() > 1
                ? upward(new Run(run.convention(), above, run.length() + 1, run.width()))
                : run;
    }

    /** Index of the line before which is not blank; comments only, or no comments at all. */
    int previous(int from, boolean comments) {
        for (int i = from - 1; i >= 0; i--) {
            String text = lines.get(i).text().strip();
            if (!text.isEmpty() && text.startsWith("#") == comments) {
                return i;
            }
            if (comments && !text.isEmpty()) {
                return -1;
            }
        }
        return -1;
    }

    String decoded(int place) {
        Line line = lines.get(place);
        ByteBuffer raw = ByteBuffer.wrap(bytes, line.from(), line.text().length());
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(raw.duplicate()).toString();
        } catch (CharacterCodingException e) {
            return OLDER.decode(raw).toString();
        }
    }
}
