package io.burnlaw.report.document;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/** Passes a text of several lines on as {@link Invisible#shownInLines} gives it, without holding it. */
public final class ShownWriter extends FilterWriter {

    private static final int NONE = -1;

    /** The first half of a character that takes two, while the second is awaited. */
    private int half = NONE;

    /**
     * Makes a writer.
     *
     * @param out where the text goes
     */
    public ShownWriter(Writer out) {
        super(out);
    }

    @Override
    public void write(int c) throws IOException {
        write(new char[] {(char) c}, 0, 1);
    }

    @Override
    public void write(String text, int from, int count) throws IOException {
        write(text.substring(from, from + count).toCharArray(), 0, count);
    }

    @Override
    public void write(char[] text, int from, int count) throws IOException {
        if (half == NONE && allPlain(text, from, count)) {
            out.write(text, from, count);
            return;
        }
        StringBuilder shown = new StringBuilder(count + 1);
        for (int i = from; i < from + count; i++) {
            char c = text[i];
            if (half != NONE && Character.isLowSurrogate(c)) {
                shown.appendCodePoint(Invisible.inLines(Character.toCodePoint((char) half, c)));
                half = NONE;
                continue;
            }
            passHalf(shown);
            if (Character.isHighSurrogate(c)) {
                half = c;
            } else {
                shown.append((char) Invisible.inLines(c));
            }
        }
        out.append(shown);
    }

    /** Nearly all of a page: nothing is to be looked up, and nothing changes. */
    private static boolean allPlain(char[] text, int from, int count) {
        for (int i = from; i < from + count; i++) {
            char c = text[i];
            if (c != '\n' && (c < ' ' || c > '~')) {
                return false;
            }
        }
        return true;
    }

    private void passHalf(StringBuilder shown) {
        if (half != NONE) {
            shown.append((char) half);
            half = NONE;
        }
    }

    @Override
    public void close() throws IOException {
        StringBuilder left = new StringBuilder(1);
        passHalf(left);
        out.append(left);
        super.close();
    }
}
