package io.burnlaw.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.burnlaw.report.SampleDocument;
import io.burnlaw.report.document.JsonWriter.InertCharacters;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordTextTest {

    /** Jackson's own way from records to text, with the names and the absences that the format asks for. */
    private static final ObjectWriter JACKSON = JsonMapper.builder(new JsonFactoryBuilder()
                    .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                    .characterEscapes(new InertCharacters())
                    .build())
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.ALWAYS))
            .build()
            .writer(new DefaultPrettyPrinter(
                            Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                    .withObjectIndenter(new DefaultIndenter("  ", "\n")));

    static List<Object> values() {
        return List.of(
                SampleDocument.rich(),
                SampleDocument.rich().firings().get(0),
                List.of(),
                Map.of(),
                Map.of(
                        "a",
                        List.of(1, 2L, 1.5, 1e-9, true, "<b> & \"\u202e\" \u00e9 \ud83d\ude00", List.of(), Map.of())),
                8.41e21,
                "text");
    }

    @ParameterizedTest
    @MethodSource("values")
    void writesWhatJacksonWouldWrite(Object value) throws Exception {
        assertThat(DocumentFile.text(value)).isEqualTo(JACKSON.writeValueAsString(value) + "\n");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aNumberThatJsonCannotHoldIsRefusedWithItsPlace(double number) {
        assertThatThrownBy(() -> DocumentFile.text(Map.of("along", List.of(1.0, Quantity.of(number, "s")))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the number " + number + " cannot be published (at /along/1/value)");
    }

    @Test
    void somethingElseIsRefusedWithItsPlace() {
        assertThatThrownBy(() -> DocumentFile.text(Map.of("mark", 'x')))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("x cannot be published (at /mark)");
    }
}
