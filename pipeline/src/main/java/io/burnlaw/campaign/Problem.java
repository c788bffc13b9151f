package io.burnlaw.campaign;

/**
 * What is wrong with a file, where, and how to mend it.
 *
 * @param file     path as the user knows it
 * @param line     line of the file, from 1; 0 where the file as a whole is meant
 * @param place    column heading or key; empty text where none
 * @param what     what is wrong, in a few words
 * @param found    what stands there; empty text where nothing can be shown
 * @param expected what should stand there
 * @param mend     what to write or do; lines to copy each on a line of its own
 */
public record Problem(String file, int line, String place, String what, String found, String expected, String mend) {

    public Problem {
        file = Excerpt.of(file);
        place = Excerpt.of(place);
        found = Excerpt.of(found);
    }

    /** {@return the message as it is printed: the place as an editor shows it, then found, expected and mend} */
    public String text() {
        return where() + what + block("found", found) + block("expected", expected) + block("mend it", mend);
    }

    /** {@return the same in one line, for a finding} */
    public String sentence() {
        return where()
                + what
                + (found.isEmpty() ? "" : "; found: " + found)
                + (expected.isEmpty() ? "" : "; expected: " + expected)
                + (mend.isEmpty() ? "" : "; mend it: " + mend.replace("\n", "; "));
    }

    private String where() {
        return file + (line > 0 ? ":" + line : "") + ": " + (place.isEmpty() ? "" : place + ": ");
    }

    private static String block(String name, String content) {
        return content.isEmpty() ? "" : "\n    %-10s %s".formatted(name, content.replace("\n", "\n" + " ".repeat(17)));
    }
}
