package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.AnnotatedParameter;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How the records become JSON and come back: strict on the way in, the same bytes each time on the way out.
 *
 * <p>Left to itself Jackson reads a missing number as 0, takes {@code "1.5"} for a number, lets the last of two equal
 * members win, and writes NaN as a string. Each of these would be a wrong number that nobody sees.
 */
final class DocumentMapper {

    static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    // the shortest text that gives the number back: Java's own is that from version 19 on only
                    .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            // members that a later version of the format adds are passed over
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .annotationIntrospector(new RequiredUnlessNullable())
            .addModule(finiteNumbers())
            .build();

    private DocumentMapper() {}

    /** {@return a writer of pretty text with {@code \n}, an array of numbers on one line, and inert characters} */
    static ObjectWriter writer() {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(
                        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                .withObjectIndenter(new DefaultIndenter("  ", "\n"));
        return MAPPER.writer(printer).with(new InertCharacters()).without(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    }

    /** Makes the serializers of a record and of the records in it; else each is made when the first one is written. */
    static void prepare(Class<?> record) {
        prepare(record, writer(), new HashSet<>());
    }

    private static void prepare(Type type, ObjectWriter writer, Set<Type> done) {
        if (type instanceof ParameterizedType list) {
            for (Type element : list.getActualTypeArguments()) {
                prepare(element, writer, done);
            }
        } else if (type instanceof Class<?> record && record.isRecord() && done.add(record)) {
            writer.forType(record);
            for (RecordComponent component : record.getRecordComponents()) {
                prepare(component.getGenericType(), writer, done);
            }
        }
    }

    private static SimpleModule finiteNumbers() {
        return new SimpleModule("finite numbers")
                .addSerializer(Double.class, new FiniteNumber())
                .addSerializer(double.class, new FiniteNumber())
                .addDeserializer(Double.class, new FiniteReading())
                .addDeserializer(double.class, new FiniteReading());
    }

    /** Refuses a number that no double holds: left to itself Jackson reads {@code 1e999} as infinity. */
    private static final class FiniteReading extends StdScalarDeserializer<Double> {

        FiniteReading() {
            super(Double.class);
        }

        @Override
        public Double deserialize(JsonParser json, DeserializationContext context) throws IOException {
            if (!json.currentToken().isNumeric()) {
                return (Double) context.handleUnexpectedToken(Double.class, json);
            }
            double value = json.getDoubleValue();
            if (!Double.isFinite(value)) {
                throw context.weirdNumberException(value, Double.class, "the number is too large");
            }
            return value;
        }
    }

    /** Refuses NaN and infinity: JSON has no word for them, and a reader would take any substitute for a value. */
    private static final class FiniteNumber extends StdSerializer<Double> {

        FiniteNumber() {
            super(Double.class);
        }

        @Override
        public void serialize(Double value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (!Double.isFinite(value)) {
                throw JsonMappingException.from(json, "the number " + value + " cannot be published");
            }
            char[] digits = new char[FewDecimals.LONGEST];
            int length = FewDecimals.write(value, digits);
            if (length > 0) {
                json.writeNumber(digits, 0, length);
            } else {
                json.writeNumber(value);
            }
        }
    }

    /** A component of a record is required unless its type says {@code @Nullable}. */
    private static final class RequiredUnlessNullable extends JacksonAnnotationIntrospector {

        @Override
        public @Nullable Boolean hasRequiredMarker(AnnotatedMember member) {
            return isRequired(member) ? Boolean.TRUE : super.hasRequiredMarker(member);
        }

        @Override
        public JsonSetter.Value findSetterInfo(Annotated member) {
            return isRequired(member) ? JsonSetter.Value.forValueNulls(Nulls.FAIL) : super.findSetterInfo(member);
        }

        private static boolean isRequired(Annotated member) {
            if (!(member instanceof AnnotatedParameter parameter)
                    || !parameter.getDeclaringClass().isRecord()) {
                return false;
            }
            RecordComponent[] components = parameter.getDeclaringClass().getRecordComponents();
            return parameter.getIndex() < components.length
                    && !components[parameter.getIndex()].getAnnotatedType().isAnnotationPresent(Nullable.class);
        }
    }

    /**
     * Writes as escapes what could end a script element of a page ({@code <}), and what turns or hides the text around
     * it: direction marks, other invisible controls, line separators. The text that is read back is the same.
     */
    private static final class InertCharacters extends CharacterEscapes {

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
