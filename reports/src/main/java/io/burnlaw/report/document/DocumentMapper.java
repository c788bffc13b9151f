package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.AnnotatedParameter;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import org.jspecify.annotations.Nullable;

/**
 * How the records come back from JSON, strictly; {@link JsonWriter} is the way there.
 *
 * <p>Left to itself Jackson reads a missing number as 0, takes {@code "1.5"} for a number, and lets the last of two equal
 * members win. Each of these would be a wrong number that nobody sees.
 */
final class DocumentMapper {

    static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            // members that a later version of the format adds are passed over
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .annotationIntrospector(new RequiredUnlessNullable())
            .addModule(finiteNumbers())
            .build();

    private DocumentMapper() {}

    private static SimpleModule finiteNumbers() {
        return new SimpleModule("finite numbers")
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
}
