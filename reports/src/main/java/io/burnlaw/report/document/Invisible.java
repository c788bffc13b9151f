package io.burnlaw.report.document;

/**
 * Characters that show nothing of themselves and change how their neighbours are shown: control characters, marks of
 * writing direction (Unicode Standard Annex 9), zero-width characters, line and paragraph separators. A name that
 * holds them could be read as another name.
 */
public final class Invisible {

    private Invisible() {}

    /**
     * Whether a character is one of them.
     *
     * @param character a code point
     * @return true for controls, format characters, separators of lines and paragraphs, and halves of surrogates
     */
    public static boolean is(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL, Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }

    /**
     * A text in which each of them is replaced by the sign for an unknown character; tab and line feed become spaces.
     *
     * @param text any text
     * @return the same text, safe to show
     */
    public static String shown(String text) {
        if (text.codePoints().noneMatch(Invisible::is)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> shown.appendCodePoint(c == '\n' || c == '\t' ? ' ' : is(c) ? 0xFFFD : c));
        return shown.toString();
    }
}
