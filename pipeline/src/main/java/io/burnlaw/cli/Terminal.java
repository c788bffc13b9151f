package io.burnlaw.cli;

/** Text on its way to a terminal. */
final class Terminal {

    private static final int MINUS = 0x2212;

    private Terminal() {}

    /**
     * The text without anything that a terminal could obey: control characters become a visible mark, and so do the
     * marks that turn the direction of writing. A minus sign becomes a hyphen: on a terminal of another character set
     * it would be lost, and a number with it its sign.
     *
     * @param text from anywhere
     * @return the text, safe to print; line ends and tabs stay
     */
    static String safe(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            boolean control = Character.isISOControl(c) && c != '\n' && c != '\t';
            boolean turning = c >= 0x202A && c <= 0x202E
                    || c >= 0x2066 && c <= 0x2069
                    || c == 0x200E
                    || c == 0x200F
                    || c == 0x061C;
            out.appendCodePoint(control || turning ? 0xFFFD : c == MINUS ? '-' : c);
        });
        return out.toString();
    }
}
