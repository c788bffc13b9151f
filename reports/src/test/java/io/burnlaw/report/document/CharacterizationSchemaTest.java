package io.burnlaw.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.report.HostileDocument;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.SampleDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;
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

    @BeforeAll
    static void writeBothCopiesAnewIfAsked() throws IOException {
        if (Boolean.getBoolean("burnlaw.update")) {
            for (Path copy : List.of(SHIPPED, PUBLISHED)) {
                Files.createDirectories(copy.getParent());
                Files.writeString(copy, SchemaOfRecords.text(RECORDS));
            }
        }
    }

    /** After a change of the records run this class with {@code -Dburnlaw.update=true}. */
    @Test
    void bothCopiesSayWhatTheRecordsSay() {
        assertThat(SHIPPED).hasContent(SchemaOfRecords.text(RECORDS));
        assertThat(PUBLISHED).hasSameBinaryContentAs(SHIPPED);
    }

    @Test
    void theSchemaIsOneByItsOwnDialect() throws IOException {
        Schema dialect = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(problems(dialect, new JsonMapper().readTree(Files.readString(SHIPPED))))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource
    void documentsThatAreWrittenAreValid(Characterization document, @TempDir Path work) throws IOException {
        ReportWriter.write(document, work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        JsonNode written = new JsonMapper().readTree(Files.readString(work.resolve("out/burnlaw.json")));
        assertThat(problems(schema(), written)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("documentsThatAreWrittenAreValid")
    void coefficientsThatAreWrittenAreValid(Characterization document, @TempDir Path work) throws IOException {
        ReportWriter.write(document, work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        JsonNode written = new JsonMapper().readTree(Files.readString(work.resolve("out/coefficients.json")));
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(PUBLISHED.resolveSibling("burnlaw-coefficients-1.schema.json")));
        assertThat(problems(schema, written)).isEmpty();
        assertThat(written.at("/formulations").size())
                .isEqualTo(document.formulations().size());
        if (!written.at("/formulations").isEmpty()
                && !written.at("/formulations/0/laws").isEmpty()) {
            ObjectNode law = (ObjectNode) written.at("/formulations/0/laws/0");
            ((ObjectNode) law.get("mm_per_second_megapascal")).put("a", -1);
            law.put("pressure_lo", 1);
            assertThat(problems(schema, written)).hasSize(2);
        }
    }

    static Stream<Characterization> documentsThatAreWrittenAreValid() {
        return Stream.of(SampleDocument.rich(), SampleDocument.bare(), HostileDocument.document());
    }

    @ParameterizedTest
    @MethodSource
    void aSpoiledDocumentIsNot(String place, Consumer<ObjectNode> spoil) throws IOException {
        ObjectNode document = (ObjectNode) new JsonMapper().readTree(DocumentFile.text(SampleDocument.rich()));
        spoil.accept(document);
        assertThat(problems(schema(), document))
                .singleElement()
                .extracting(error -> error.getInstanceLocation().toString())
                .isEqualTo(place);
    }

    static Stream<Arguments> aSpoiledDocumentIsNot() {
        return Stream.of(
                spoiled("", document -> document.remove("campaign")),
                spoiled("/format", document -> document.put("format", "burnlaw-characterization/2")),
                spoiled("/firings", document -> document.put("firings", "none")),
                spoiled("/firings/0/status", document -> firing(document).put("status", "good")),
                spoiled("/firings/0", document -> firing(document).remove("id")),
                spoiled(
                        "/firings/0/burn_time/value",
                        document -> ((ObjectNode) document.at("/firings/0/burn_time")).put("value", "1.5")),
                spoiled(
                        "/firings/0/burn_time/level",
                        document -> ((ObjectNode) document.at("/firings/0/burn_time")).put("level", 95)));
    }

    @Test
    void membersOfALaterVersionArePassedOver() throws IOException {
        ObjectNode document = (ObjectNode) new JsonMapper().readTree(DocumentFile.text(SampleDocument.rich()));
        firing(document).put("colour_of_the_smoke", "white");
        assertThat(problems(schema(), document)).isEmpty();
    }

    private static Arguments spoiled(String place, Consumer<ObjectNode> spoil) {
        return Arguments.of(place, spoil);
    }

    private static ObjectNode firing(ObjectNode document) {
        return (ObjectNode) document.at("/firings/0");
    }

    private static Schema schema() throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(SHIPPED));
    }

    private static List<Error> problems(Schema schema, JsonNode document) {
        return schema.validate(
                document, context -> context.executionConfig(execution -> execution.locale(Locale.ENGLISH)));
    }
}
