package io.burnlaw.report.document;

/**
 * Invisible characters that change how their neighbours are shown: control characters, marks of writing direction
 * (Unicode Standard Annex 9), zero-width characters, line and paragraph separators. A name with such characters could
 * be read as another name.
 */
public final class Invisible {

    private Invisible() {}

    /**
     * Whether a character is one of them.
     *
     * @param character a code point
     * @return true for controls, format characters, and separators of lines and paragraphs; false for the two joiners
     *         that the spelling of some languages needs
     */
    public static boolean is(int character) {
        if (character == 0x200C || character == 0x200D) {
            return false;
        }
        return switch (Character.getType(character)) {
            case Character.CONTROL, Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }

    /**
     * A text of one line in which each of them is replaced by the sign for an unknown character; tab and line feed
     * become spaces.
     *
     * @param text any text
     * @return the same text, safe to show
     */
    public static String shown(String text) {
        return shownInLines(text).replace('\n', ' ').replace('\t', ' ');
    }

    /**
     * A text of several lines in which each of them but tab and line feed is replaced by the sign for an unknown
     * character.
     *
     * @param text any text
     * @return the same text, safe to show
     */
    public static String shownInLines(String text) {
        if (text.codePoints().noneMatch(Invisible::harms)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> shown.appendCodePoint(inLines(c)));
        return shown.toString();
    }

    static int inLines(int character) {
        return harms(character) ? 0xFFFD : character;
    }

    private static boolean harms(int character) {
        return character != '\n' && character != '\t' && is(character);
    }
}
