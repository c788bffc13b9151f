package io.burnlaw.report.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Writes the JSON Schema (draft 2020-12) that the records of the document amount to; descriptions are the sentences of
 * their javadoc, {@link SchemaRules} adds what a type does not say.
 */
final class SchemaOfRecords {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final Pattern TAG = Pattern.compile("@param (\\w+) (.*?)(?=@param|$)", Pattern.DOTALL);
    private static final Pattern INLINE = Pattern.compile("\\{@\\w+ ([^}]*)}");

    private final Path sources;
    private final Deque<Class<?>> waiting = new ArrayDeque<>();
    private final Map<String, ObjectNode> definitions = new TreeMap<>();

    private SchemaOfRecords(Path sources) {
        this.sources = sources;
    }

    /**
     * The schema of a file.
     *
     * @param sources folder of the records' source files
     * @param file    the record that the file is
     * @param format  of the file
     * @param title   of the schema
     * @return text that ends with a line end
     */
    static String text(Path sources, Class<?> file, String format, String title) {
        SchemaOfRecords schema = new SchemaOfRecords(sources);
        ObjectNode root = NODES.objectNode();
        root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        root.put("$id", "urn:burnlaw:schema:" + format.replace("burnlaw-", "").replace('/', ':'));
        root.put("title", title + ", " + format);
        root.setAll(schema.object(file));
        ((ObjectNode) root.at("/properties/format")).put("const", format);
        while (!schema.waiting.isEmpty()) {
            Class<?> next = schema.waiting.remove();
            schema.definitions.put(next.getSimpleName(), schema.object(next));
        }
        root.set("$defs", NODES.objectNode().setAll(schema.definitions));
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(
                        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                .withObjectIndenter(new DefaultIndenter("  ", "\n"));
        try {
            return new JsonMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    private ObjectNode object(Class<?> type) {
        String comment = comment(type);
        Map<String, String> told = members(comment);
        ObjectNode schema = NODES.objectNode();
        schema.put("description", plain(comment.split("@param", 2)[0]));
        schema.put("type", "object");
        ArrayNode required = NODES.arrayNode();
        ObjectNode properties = NODES.objectNode();
        for (RecordComponent component : type.getRecordComponents()) {
            String name = PropertyNamingStrategies.SnakeCaseStrategy.INSTANCE.translate(component.getName());
            if (!component.getAnnotatedType().isAnnotationPresent(Nullable.class) || SchemaRules.required(component)) {
                required.add(name);
            }
            ObjectNode member = value(component.getGenericType());
            SchemaRules.narrow(component, member);
            String description = told.get(component.getName());
            if (description != null) {
                member.put("description", description);
            }
            properties.set(name, member);
        }
        schema.set("required", required);
        schema.set("properties", properties);
        schema.put("additionalProperties", SchemaRules.open(type));
        SchemaRules.between(type).ifPresent(schema::setAll);
        return schema;
    }

    private ObjectNode value(Type type) {
        ObjectNode schema = NODES.objectNode();
        if (type == String.class) {
            return schema.put("type", "string");
        }
        if (type == double.class || type == Double.class) {
            return schema.put("type", "number");
        }
        if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
            return schema.put("type", "integer");
        }
        if (type == boolean.class || type == Boolean.class) {
            return schema.put("type", "boolean");
        }
        if (type instanceof ParameterizedType list && list.getRawType() == List.class) {
            schema.put("type", "array");
            schema.set("items", value(list.getActualTypeArguments()[0]));
            return schema;
        }
        if (type instanceof Class<?> record && record.isRecord()) {
            if (definitions.putIfAbsent(record.getSimpleName(), schema) == null) {
                waiting.add(record);
            }
            return NODES.objectNode().put("$ref", "#/$defs/" + record.getSimpleName());
        }
        throw new IllegalStateException("no schema for " + type + ": say here what it becomes in JSON");
    }

    /** The text of the comment above the record. */
    private String comment(Class<?> type) {
        try {
            Class<?> outer = type.getEnclosingClass() == null ? type : type.getEnclosingClass();
            String source = Files.readString(sources.resolve(outer.getSimpleName() + ".java"));
            String before = source.substring(0, source.indexOf("public record " + type.getSimpleName() + "("));
            String comment = before.substring(before.lastIndexOf("/**") + 3, before.lastIndexOf("*/"));
            return comment.replaceAll("(?m)^\\s*\\*", "").replace("<p>", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> members(String comment) {
        Map<String, String> members = new TreeMap<>();
        Matcher tag = TAG.matcher(comment);
        while (tag.find()) {
            members.put(tag.group(1), plain(tag.group(2)));
        }
        return members;
    }

    private static String plain(String comment) {
        return INLINE.matcher(comment).replaceAll("$1").replaceAll("\\s+", " ").strip();
    }
}
