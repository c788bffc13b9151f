package io.burnlaw.campaign;

import java.util.List;
import java.util.Map;

/** A YAML document as it was written: every scalar is the text that stands there, so {@code no} stays {@code no}. */
public sealed interface YamlNode {

    /** {@return line on which it begins, from 1} */
    int line();

    /**
     * A scalar.
     *
     * @param line where
     * @param text as written
     * @param empty whether nothing was written, or null
     */
    record Scalar(int line, String text, boolean empty) implements YamlNode {}

    /**
     * A mapping.
     *
     * @param line    where
     * @param entries in the order of the file
     */
    record Mapping(int line, Map<String, Entry> entries) implements YamlNode {}

    /**
     * A sequence.
     *
     * @param line  where
     * @param items in order
     */
    record Sequence(int line, List<YamlNode> items) implements YamlNode {}

    /**
     * A value with the line of its key.
     *
     * @param line  of the key
     * @param value what stands behind it
     */
    record Entry(int line, YamlNode value) {}
}
