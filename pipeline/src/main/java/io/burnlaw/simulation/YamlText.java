package io.burnlaw.simulation;

/** Keys and values in the order in which they were said. */
final class YamlText {

    private final StringBuilder text = new StringBuilder();
    private int depth;

    /** A value as it stands: a number, a quantity, a word. */
    YamlText plain(String key, String value) {
        line(key, " " + value);
        return this;
    }

    /** A text that may hold anything printable. */
    YamlText quoted(String key, String value) {
        return plain(
                key, '"' + value.replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("\\s+", " ") + '"');
    }

    /** Opens a mapping. */
    YamlText open(String key) {
        line(key, "");
        depth++;
        return this;
    }

    /** Closes the mapping opened last. */
    YamlText close() {
        depth--;
        return this;
    }

    YamlText comment(String line) {
        text.append("# ").append(line).append('\n');
        return this;
    }

    private void line(String key, String rest) {
        text.append("  ".repeat(depth)).append(key).append(':').append(rest).append('\n');
    }

    String text() {
        return text.toString();
    }
}
