package io.burnlaw.report.chart;

import io.burnlaw.report.document.Invisible;

/** SVG text in the making. Coordinates are written with two decimals, words are escaped. */
final class Svg {

    private final StringBuilder text = new StringBuilder();

    /** A coordinate, the same in every locale. */
    static String number(double value) {
        StringBuilder text = new StringBuilder(12);
        number(text, value);
        return text.toString();
    }

    /** Adds a coordinate to a text. */
    static void number(StringBuilder text, double value) {
        long hundredths = (long) Math.rint(value * 100);
        if (hundredths < 0) {
            text.append('-');
            hundredths = -hundredths;
        }
        text.append(hundredths / 100);
        int rest = (int) (hundredths % 100);
        if (rest != 0) {
            text.append('.').append((char) ('0' + rest / 10));
            if (rest % 10 != 0) {
                text.append((char) ('0' + rest % 10));
            }
        }
    }

    static String escape(String words) {
        return Invisible.shown(words)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    Svg raw(String svg) {
        text.append(svg);
        return this;
    }

    Svg line(double x1, double y1, double x2, double y2, Ink ink, String more) {
        return raw("<line x1=\"" + number(x1) + "\" y1=\"" + number(y1) + "\" x2=\"" + number(x2) + "\" y2=\""
                + number(y2) + "\" " + stroke(ink) + more + "/>");
    }

    Svg rect(double x, double y, double width, double height, Ink ink, double opacity) {
        return raw("<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(width) + "\" height=\""
                + number(height) + "\" " + fill(ink) + " fill-opacity=\"" + number(opacity) + "\"/>");
    }

    Svg words(double x, double y, String anchor, Ink ink, String words) {
        return words(x, y, anchor, ink, "", words);
    }

    /** Words with a further class for style sheets, which begins with a space. */
    Svg words(double x, double y, String anchor, Ink ink, String role, String words) {
        return raw("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor + "\" fill=\""
                + ink.light() + "\" class=\"f-" + ink.key() + role + "\">" + escape(words) + "</text>");
    }

    /** Words over marks, on a rim of paper so that they stay readable. */
    Svg rimmed(double x, double y, String anchor, Ink ink, String words) {
        return raw("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor + "\" fill=\""
                + ink.light()
                + "\" stroke=\"" + Ink.PAPER.light() + "\" class=\"f-" + ink.key() + " s-" + Ink.PAPER.key()
                + " rim\" stroke-width=\"2.5\" stroke-linejoin=\"round\">" + escape(words)
                + "</text>");
    }

    static String stroke(Ink ink) {
        return ink.stroke();
    }

    static String fill(Ink ink) {
        return ink.fill();
    }

    /** The mean width of a letter at the size of {@link Figure}. */
    private static final double LETTER = 7.7;

    /** How wide words will be, near enough to keep them apart: fonts differ by a tenth. */
    static double widthOf(String words) {
        return LETTER * words.codePointCount(0, words.length());
    }

    /** Words cut to a width, with an ellipsis. */
    static String cut(String words, double width) {
        int characters = (int) (width / LETTER);
        return words.codePointCount(0, words.length()) <= characters
                ? words
                : words.substring(0, words.offsetByCodePoints(0, Math.max(1, characters - 1))) + "\u2026";
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
