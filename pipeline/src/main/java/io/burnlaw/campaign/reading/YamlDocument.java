package io.burnlaw.campaign.reading;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Reads one YAML document with the line of every key. Aliases, anchors, tags and doubled keys are refused: values are
 * read as written, and a small file cannot expand into a large one.
 */
public final class YamlDocument {

    /** campaign.yaml needs three levels. */
    private static final int DEEPEST = 20;

    private static final long MOST_BYTES = 1L << 20;

    private static final YAMLFactory FACTORY = new YAMLFactory();

    private final String file;
    private final List<Problem> problems;

    private YamlDocument(String file, List<Problem> problems) {
        this.file = file;
        this.problems = problems;
    }

    /**
     * Reads a document.
     *
     * @param problems where what is wrong is added
     * @return the mapping at its root; empty where it cannot be read
     */
    static Optional<YamlNode.Mapping> read(String file, String text, List<Problem> problems) {
        return new YamlDocument(file, problems).root(text);
    }

    /**
     * Reads a file.
     *
     * @param problems where what is wrong is added, with the path as it was given
     * @return the mapping at its root; empty where it cannot be read
     */
    public static Optional<YamlNode.Mapping> read(Path path, List<Problem> problems) {
        String name = path.toString();
        if (!Files.isRegularFile(path)) {
            String found = Files.isDirectory(path) ? "this is a folder" : "there is no such file";
            problems.add(new Problem(name, 0, "", found, "", "a file of keys and values", "check the path"));
            return Optional.empty();
        }
        try {
            Optional<DecodedText> text =
                    Files.size(path) > MOST_BYTES ? Optional.empty() : DecodedText.of(Files.readAllBytes(path));
            if (text.isPresent()) {
                return read(name, text.get().text(), problems);
            }
            problems.add(new Problem(
                    name,
                    0,
                    "",
                    "this is not text, or the file is too large",
                    "",
                    "keys and values",
                    "save it as UTF-8 text"));
        } catch (IOException e) {
            problems.add(new Problem(
                    name, 0, "", "the file cannot be read", "", "a readable file", "check its permissions"));
        }
        return Optional.empty();
    }

    private Optional<YamlNode.Mapping> root(String text) {
        try (YAMLParser parser = FACTORY.createParser(text)) {
            JsonToken first = parser.nextToken();
            if (first != JsonToken.START_OBJECT) {
                wrong(1, "this is not a list of keys with values", "format: and other keys, each with a colon");
                return Optional.empty();
            }
            YamlNode.Mapping root = mapping(parser, 1);
            if (parser.nextToken() != null) {
                wrong(line(parser), "a second document begins here", "one document");
            }
            return Optional.of(root);
        } catch (TooDeep e) {
            wrong(e.line, "the keys are nested too deeply", "at most three levels");
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            String reason =
                    String.valueOf(e.getOriginalMessage()).lines().findFirst().orElse("");
            OptionalInt tab = tabbed(text);
            wrong(
                    tab.orElse(line),
                    tab.isPresent() ? "there is a tab in the indent" : "this is not YAML: " + Excerpt.of(reason),
                    "keys and values, indented by spaces");
        } catch (IOException e) {
            wrong(0, "this is not YAML", "keys and values, indented by spaces");
        }
        return Optional.empty();
    }

    /** The first line that is indented by a tab, which YAML does not allow. */
    private static OptionalInt tabbed(String text) {
        List<String> lines = text.lines().toList();
        return IntStream.range(0, lines.size())
                .filter(i -> lines.get(i)
                        .substring(
                                0,
                                lines.get(i).length()
                                        - lines.get(i).stripLeading().length())
                        .contains("\t"))
                .map(i -> i + 1)
                .findFirst();
    }

    private YamlNode node(YAMLParser parser, JsonToken token, int depth) throws IOException {
        if (depth > DEEPEST) {
            throw new TooDeep(line(parser));
        }
        refuseReferences(parser);
        return switch (token) {
            case START_OBJECT -> mapping(parser, depth);
            case START_ARRAY -> sequence(parser, depth);
            case VALUE_NULL -> new YamlNode.Scalar("", true);
            default -> new YamlNode.Scalar(parser.getText().strip(), false);
        };
    }

    private YamlNode.Mapping mapping(YAMLParser parser, int depth) throws IOException {
        int line = line(parser);
        Map<String, YamlNode.Entry> entries = new LinkedHashMap<>();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String key = parser.currentName().strip();
            int keyLine = line(parser);
            YamlNode value = node(parser, parser.nextToken(), depth + 1);
            if (entries.putIfAbsent(key, new YamlNode.Entry(keyLine, value)) != null) {
                problems.add(new Problem(
                        file,
                        keyLine,
                        key,
                        "this key occurs a second time",
                        "first on line " + entries.get(key).line(),
                        "each key once",
                        "delete one of the two"));
            }
        }
        return new YamlNode.Mapping(line, entries);
    }

    private YamlNode.Sequence sequence(YAMLParser parser, int depth) throws IOException {
        List<YamlNode> items = new ArrayList<>();
        for (JsonToken token = parser.nextToken(); token != JsonToken.END_ARRAY; token = parser.nextToken()) {
            items.add(node(parser, token, depth + 1));
        }
        return new YamlNode.Sequence(items);
    }

    private void refuseReferences(YAMLParser parser) throws IOException {
        if (parser.isCurrentAlias() || parser.getObjectId() != null) {
            wrong(line(parser), "anchors and aliases (& and *) are not supported", "the value itself");
        }
        if (parser.getTypeId() != null) {
            wrong(line(parser), "tags (!) are not supported", "a plain value");
        }
    }

    private static int line(YAMLParser parser) {
        return parser.currentTokenLocation().getLineNr();
    }

    private void wrong(int line, String what, String expected) {
        problems.add(new Problem(file, line, "", what, "", expected, "see the keys in docs/formats.md"));
    }

    private static final class TooDeep extends IOException {
        private static final long serialVersionUID = 1L;
        private final int line;

        TooDeep(int line) {
            super("too deep");
            this.line = line;
        }
    }

    /**
     * A YAML document as it was written: every scalar is the text that stands there, so {@code no} stays {@code no}.
     */
    public sealed interface YamlNode {

        /**
         * A scalar.
         *
         * @param text as written
         * @param empty whether nothing was written, or null
         */
        record Scalar(String text, boolean empty) implements YamlNode {}

        /**
         * A mapping.
         *
         * @param entries in the order of the file
         */
        record Mapping(int line, Map<String, Entry> entries) implements YamlNode {}

        /**
         * A sequence.
         *
         * @param items in order
         */
        record Sequence(List<YamlNode> items) implements YamlNode {}

        /**
         * A value with the line of its key.
         *
         * @param value what stands behind it
         */
        record Entry(int line, YamlNode value) {}
    }
}
