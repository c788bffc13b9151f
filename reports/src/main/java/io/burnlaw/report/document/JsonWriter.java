package io.burnlaw.report.document;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.Writer;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How the records become JSON: pretty text with {@code \n}, members in the order of the components, an array of numbers on
 * one line, what is absent left out. The way back, {@link DocumentMapper}, needs a library that looks at far more than
 * this, and takes as long to start as ten firings take to draw.
 */
final class JsonWriter {

    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
            // the shortest text that gives the number back: Java's own is that from version 19 on only
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
            .characterEscapes(new InertCharacters())
            .build();

    private static final ClassValue<Member[]> MEMBERS = new ClassValue<>() {
        @Override
        protected Member[] computeValue(Class<?> type) {
            RecordComponent[] components = type.getRecordComponents();
            Member[] members = new Member[components.length];
            for (int i = 0; i < components.length; i++) {
                members[i] =
                        new Member(new SerializedString(nameOf(components[i].getName())), components[i].getAccessor());
            }
            return members;
        }
    };

    private record Member(SerializedString name, Method accessor) {}

    private JsonWriter() {}

    /** Looks at a record and the records in it; else each is looked at when the first one is written. */
    static void prepare(Class<?> type) {
        prepare(type, new HashSet<>());
    }

    private static void prepare(Type type, Set<Type> done) {
        if (type instanceof ParameterizedType list) {
            for (Type element : list.getActualTypeArguments()) {
                prepare(element, done);
            }
        } else if (type instanceof Class<?> record && record.isRecord() && done.add(record)) {
            MEMBERS.get(record);
            for (RecordComponent component : record.getRecordComponents()) {
                prepare(component.getGenericType(), done);
            }
        }
    }

    /**
     * Writes a document, or a part of it.
     *
     * @param value a record, a list, a map from text, a text, a number or a truth value
     * @param out   left open, flushed
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException if a number is NaN or infinite, with the way to it, or anything is of another type
     */
    static void write(Object value, Writer out) throws IOException {
        write(value, out, true);
    }

    /** Without spaces and lines where {@code indented} is false. */
    static void write(Object value, Writer out, boolean indented) throws IOException {
        JsonGenerator json = FACTORY.createGenerator(out);
        if (indented) {
            json.setPrettyPrinter(new DefaultPrettyPrinter(
                            Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                    .withObjectIndenter(new DefaultIndenter("  ", "\n")));
        }
        write(value, json);
        // not on the way out of a failure: it would end a text that is cut off as if it were whole
        json.close();
    }

    private static void write(@Nullable Object value, JsonGenerator json) throws IOException {
        if (value instanceof Double number) {
            number(number, json);
        } else if (value instanceof String text) {
            json.writeString(text);
        } else if (value instanceof Record record) {
            members(record, json);
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object element : list) {
                write(element, json);
            }
            json.writeEndArray();
        } else if (value instanceof Integer number) {
            json.writeNumber(number);
        } else if (value instanceof Long number) {
            json.writeNumber(number);
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                json.writeFieldName((String) entry.getKey());
                write(entry.getValue(), json);
            }
            json.writeEndObject();
        } else {
            throw new IllegalArgumentException(value + " cannot be published" + way(json));
        }
    }

    private static void members(Record record, JsonGenerator json) throws IOException {
        json.writeStartObject();
        for (Member member : MEMBERS.get(record.getClass())) {
            Object value = value(record, member.accessor());
            if (value != null) {
                json.writeFieldName(member.name());
                write(value, json);
            }
        }
        json.writeEndObject();
    }

    private static @Nullable Object value(Record record, Method accessor) {
        try {
            return accessor.invoke(record);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException("a component of a public record is public: " + accessor, e);
        }
    }

    /** JSON has no word for NaN and infinity, and a reader would take any substitute for a value. */
    private static void number(double value, JsonGenerator json) throws IOException {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the number " + value + " cannot be published" + way(json));
        }
        json.writeNumber(value);
    }

    private static String way(JsonGenerator json) {
        return " (at " + json.getOutputContext().pathAsPointer() + ")";
    }

    /** A component's name as documents write it: burnTime is burn_time, adjustedPValue is adjusted_pvalue. */
    private static String nameOf(String component) {
        StringBuilder name = new StringBuilder();
        boolean capitalBefore = false;
        for (char letter : component.toCharArray()) {
            boolean capital = Character.isUpperCase(letter);
            name.append(capital && !capitalBefore ? "_" : "").append(Character.toLowerCase(letter));
            capitalBefore = capital;
        }
        return name.toString();
    }

    /**
     * Writes as escapes what could end a script element of a page ({@code <}), and what turns or hides the text around
     * it: direction marks, other invisible controls, line separators. The text that is read back is the same.
     */
    static final class InertCharacters extends CharacterEscapes {

        private static final long serialVersionUID = 1;

        private final int[] ascii = CharacterEscapes.standardAsciiEscapesForJSON();

        InertCharacters() {
            for (char escaped : new char[] {'<', '>', '&', 0x7f}) {
                ascii[escaped] = CharacterEscapes.ESCAPE_CUSTOM;
            }
        }

        @Override
        public int[] getEscapeCodesForAscii() {
            return ascii.clone();
        }

        @Override
        public @Nullable SerializableString getEscapeSequence(int character) {
            boolean inert = character == '<' || character == '>' || character == '&' || Invisible.is(character);
            return inert ? new SerializedString(String.format(Locale.ROOT, "\\u%04x", character)) : null;
        }
    }
}
