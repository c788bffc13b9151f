package io.burnlaw.campaign;

/**
 * A short piece of foreign text, made safe to print: control characters, line breaks, and marks that turn the direction
 * of writing do not reach a terminal or a page.
 */
public final class Excerpt {

    private static final int LONGEST = 80;

    private Excerpt() {}

    /**
     * Makes a text safe to print.
     *
     * @param text from outside
     * @return at most 80 characters of it, invisible ones replaced by {@code ·}
     */
    public static String of(String text) {
        StringBuilder safe = new StringBuilder();
        int length = 0;
        for (int i = 0; i < text.length() && length < LONGEST; length++) {
            int character = text.codePointAt(i);
            i += Character.charCount(character);
            safe.appendCodePoint(printable(character) ? character : '·');
            if (length == LONGEST - 1 && i < text.length()) {
                safe.append('…');
            }
        }
        return safe.toString();
    }

    private static boolean printable(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}
