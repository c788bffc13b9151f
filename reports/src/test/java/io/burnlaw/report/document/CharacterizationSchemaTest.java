package io.burnlaw.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.SampleDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CharacterizationSchemaTest {

    private static final String NAME = "burnlaw-characterization-1.schema.json";
    private static final Path SHIPPED = Path.of("src/main/resources/io/burnlaw/report/document", NAME);
    private static final Path RECORDS = Path.of("src/main/java/io/burnlaw/report/document");
    private static final Path PUBLISHED = Path.of("../docs/schema", NAME);
    private static final Path COEFFICIENTS = PUBLISHED.resolveSibling("burnlaw-coefficients-1.schema.json");

    @BeforeAll
    static void writeAllCopiesAnewIfAsked() throws IOException {
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.createDirectories(SHIPPED.getParent());
            Files.writeString(SHIPPED, ofTheDocument());
            Files.writeString(PUBLISHED, ofTheDocument());
            Files.writeString(COEFFICIENTS, ofTheCoefficients());
        }
    }

    private static String ofTheDocument() {
        return SchemaOfRecords.text(
                RECORDS, Characterization.class, Characterization.FORMAT, "Burn-rate characterization");
    }

    private static String ofTheCoefficients() {
        return SchemaOfRecords.text(RECORDS, Coefficients.class, Coefficients.FORMAT, "Rate laws to design with");
    }

    /** After a change of the records run this class with {@code -Dburnlaw.update=true}. */
    @Test
    void allCopiesSayWhatTheRecordsSay() {
        assertThat(SHIPPED).hasContent(ofTheDocument());
        assertThat(PUBLISHED).hasSameBinaryContentAs(SHIPPED);
        assertThat(COEFFICIENTS).hasContent(ofTheCoefficients());
    }

    @Test
    void theSchemasAreSomeByTheirOwnDialect() throws IOException {
        Schema dialect = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        for (Path each : List.of(SHIPPED, COEFFICIENTS)) {
            assertThat(problems(dialect, new JsonMapper().readTree(Files.readString(each))))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource
    void documentsThatAreWrittenAreValid(Characterization document, @TempDir Path work) throws IOException {
        ReportWriter.write(document, work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        JsonNode written = new JsonMapper().readTree(Files.readString(work.resolve("out/burnlaw.json")));
        assertThat(problems(schema(SHIPPED), written)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("documentsThatAreWrittenAreValid")
    void coefficientsThatAreWrittenAreValid(Characterization document, @TempDir Path work) throws IOException {
        ReportWriter.write(document, work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        JsonNode written = new JsonMapper().readTree(Files.readString(work.resolve("out/coefficients.json")));
        assertThat(problems(schema(COEFFICIENTS), written)).isEmpty();
        assertThat(written.at("/formulations").size())
                .isEqualTo(document.formulations().size());
    }

    static Stream<Characterization> documentsThatAreWrittenAreValid() {
        return Stream.of(SampleDocument.rich(), SampleDocument.bare());
    }

    @ParameterizedTest
    @MethodSource
    void aSpoiledDocumentIsNot(String place, String member, @Nullable String value) throws IOException {
        JsonNode document = json(DocumentFile.text(SampleDocument.rich()));
        assertThat(document.at("/formulations/0/regimes/selected").asInt()).isEqualTo(2);
        spoil(document, place, member, value);
        assertThat(problems(schema(SHIPPED), document))
                .isNotEmpty()
                .allMatch(error -> (place + "/").startsWith(error.getInstanceLocation() + "/")
                        || error.getInstanceLocation().toString().startsWith(place));
    }

    /** Place, member and what it becomes; null for a member that is taken away. */
    static Stream<Arguments> aSpoiledDocumentIsNot() {
        String law = "/formulations/0/use_laws/0";
        return Stream.of(
                Arguments.of("", "campaign", null),
                Arguments.of("", "format", "'burnlaw-characterization/2'"),
                Arguments.of("", "firings", "'none'"),
                Arguments.of("/firings/0", "status", "'good'"),
                Arguments.of("/firings/0", "id", null),
                Arguments.of("/firings/0/burn_time", "value", "'1.5'"),
                Arguments.of("/firings/0/burn_time", "level", "95"),
                Arguments.of("/firings/0/burn_time", "unit", "'MPa'"),
                Arguments.of("/inputs/0", "sha256", "'abc'"),
                Arguments.of(law + "/coefficient", "value", "-1"),
                Arguments.of(law + "/coefficient", "value", "0"),
                Arguments.of(law + "/coefficient", "low", "-0.1"),
                Arguments.of(law + "/coefficient", "high", null),
                Arguments.of(law + "/coefficient", "unit", "'kg'"),
                Arguments.of(law + "/coefficient", "unit", null),
                Arguments.of(law + "/coefficient", "valeu", "1"),
                Arguments.of(law + "/exponent", "unit", "'mm/s'"),
                Arguments.of(law + "/pressure_low", "value", "-0.1"),
                Arguments.of(law, "covariance", "[[0.001]]"),
                Arguments.of(law, "covariance", "[[0.001, 0], [0, 0.001], [0, 0]]"),
                Arguments.of(law, "covariance", "[[0.001, 0], [0]]"),
                Arguments.of(law, "covariance", "[[-0.001, 0], [0, 0.001]]"),
                Arguments.of(law, "covariance", null),
                Arguments.of(law, "pressure_lo", "1"),
                Arguments.of(law, "points_used", "-3"),
                Arguments.of(law, "regime", null),
                Arguments.of(law + "/unit_pairs/0", "pressure_unit", "'kg'"),
                Arguments.of(law + "/unit_pairs/0", "coefficient", "-1"),
                Arguments.of("/formulations/0", "use_laws", "[]"),
                Arguments.of("/formulations/0", "use_laws", null),
                Arguments.of("/formulations/0", "treshold", "{}"),
                Arguments.of("/formulations/0/regimes", "laws", "[]"),
                Arguments.of("/formulations/0/regimes", "breaks", "[]"),
                Arguments.of("/formulations/0/regimes", "shape", null),
                Arguments.of("/formulations/0/regimes", "selected", "3"),
                Arguments.of("/formulations/0/regimes/breaks/0", "kind", "'step'"),
                Arguments.of("/formulations/0/points/0/pressure", "unit", "'mm'"),
                Arguments.of("/formulations/0/points/0/rate", "value", "-5"));
    }

    @ParameterizedTest
    @MethodSource
    void spoiledCoefficientsAreNot(String place, String member, @Nullable String value) throws IOException {
        JsonNode coefficients = json(DocumentFile.text(Coefficients.of(SampleDocument.rich())));
        spoil(coefficients, place, member, value);
        assertThat(problems(schema(COEFFICIENTS), coefficients)).isNotEmpty();
    }

    static Stream<Arguments> spoiledCoefficientsAreNot() {
        String law = "/formulations/0/laws/0";
        return Stream.of(
                Arguments.of("", "format", "'burnlaw-coefficients/2'"),
                Arguments.of("", "cautions", null),
                Arguments.of("/formulations/0", "id", "''"),
                Arguments.of("/formulations/0", "density_gram_per_cm3", "-1"),
                Arguments.of("/formulations/0", "density_kilogram_per_m3", "1800"),
                Arguments.of(law + "/mm_per_second_megapascal", "a", "-1"),
                Arguments.of(law + "/mm_per_second_megapascal", "a_high", null),
                Arguments.of(law, "mm_per_second_megapascal", null),
                Arguments.of(law, "inch_per_second_psi", null),
                Arguments.of(law, "kilogram", "1"),
                Arguments.of(law, "pressure_lo", "1"),
                Arguments.of(law, "covariance", "[[0.001]]"),
                Arguments.of(law, "points", "-1"),
                Arguments.of(law, "regime", null),
                Arguments.of("/formulations/0/laws", "1", null));
    }

    private static void spoil(JsonNode document, String place, String member, @Nullable String value)
            throws IOException {
        JsonNode node = document.at(place);
        if (node instanceof ArrayNode list) {
            list.remove(Integer.parseInt(member));
        } else if (value == null) {
            assertThat(((ObjectNode) node).remove(member)).isNotNull();
        } else {
            ((ObjectNode) node).set(member, json(value.replace('\'', '"')));
        }
    }

    @Test
    void membersOfALaterVersionArePassedOverWhereNoNumberHangsOnThem() throws IOException {
        JsonNode document = json(DocumentFile.text(SampleDocument.rich()));
        spoil(document, "/firings/0", "colour_of_the_smoke", "'white'");
        assertThat(problems(schema(SHIPPED), document)).isEmpty();
    }

    private static JsonNode json(String text) throws IOException {
        return new JsonMapper().readTree(text);
    }

    private static Schema schema(Path file) throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(file));
    }

    private static List<Error> problems(Schema schema, JsonNode document) {
        return schema.validate(
                document, context -> context.executionConfig(execution -> execution.locale(Locale.ENGLISH)));
    }
}
