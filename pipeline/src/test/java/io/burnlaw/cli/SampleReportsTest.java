package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.Oracle;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What other tools find in the report of each sample campaign. */
class SampleReportsTest {

    private static final Path SAMPLES = Path.of("..", "sample-runs");
    private static final Path SCHEMAS = Path.of("..", "docs", "schema");
    private static final String CRATE = "ro-crate-metadata.json";

    @TempDir
    private Path folder;

    static Stream<Path> samples() throws IOException {
        return Files.list(SAMPLES).filter(Files::isDirectory).sorted();
    }

    @ParameterizedTest
    @MethodSource("samples")
    @Oracle(
            value =
                    "RO-Crate Metadata Specification 1.1.1 (2021), every MUST on structure, root and data entities; Citation"
                            + " File Format schema 1.2.0 (Druskat et al. 2021), the keys in use",
            agreement = "each holds")
    void documentsAndDescriptionsAreOfTheirFormats(Path sample) throws Exception {
        run(sample);
        assertOfItsSchema("burnlaw.json", "burnlaw-characterization-1.schema.json");
        assertOfItsSchema("coefficients.json", "burnlaw-coefficients-1.schema.json");
        Map<String, JsonNode> crate = assertCrate();
        assertThat(crate.get("./").at("/license/@id").asText()).isEqualTo("https://spdx.org/licenses/CC0-1.0");
        assertThat(crate.get("#author").get("name").asText()).startsWith("Invented ");
        assertThat(crate).containsKeys("firings/", "charts/", "index.html", "laws.csv", "CITATION.cff");
        assertCitation("CC0-1.0");
        assertThat(Files.readString(folder.resolve(".burnlaw-report.sha256"))).contains("  " + CRATE, "  CITATION.cff");
        assertPage();
    }

    @Test
    void nothingIsSaidThatTheCampaignDoesNotState() throws Exception {
        run(SAMPLES.resolve("strand-set"));
        ObjectNode document = (ObjectNode) json("burnlaw.json");
        ((ObjectNode) document.get("campaign")).remove(List.of("prepared_by", "licence"));
        write(document);
        assertThat(folder.resolve("CITATION.cff")).doesNotExist();
        Map<String, JsonNode> crate = assertCrate();
        assertThat(crate.get("./").get("license").asText()).startsWith("No licence is stated");
        assertThat(crate).doesNotContainKey("#author");
        assertThat(crate.get("./").has("author")).isFalse();

        ((ObjectNode) document.get("campaign"))
                .put("licence", "ask \"Dr. B\": the owner")
                .put("prepared_by", "A: B #1");
        write(document);
        assertThat(assertCrate().get("./").get("license").asText()).isEqualTo("ask \"Dr. B\": the owner");
        assertCitation(null);
        byte[] before = Files.readAllBytes(folder.resolve(CRATE));
        write(document);
        assertThat(folder.resolve(CRATE)).hasBinaryContent(before);

        // the specification demands a date, and a reproducible document has none
        document.remove("created");
        write(document);
        assertThat(folder.resolve(CRATE)).doesNotExist();
    }

    private void run(Path sample) {
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        assertThat(Burnlaw.commandLine(nowhere, nowhere).execute("run", sample.toString(), "-o", folder.toString()))
                .isBetween(0, 1);
    }

    private void write(JsonNode document) throws IOException {
        DocumentReading reading = DocumentFile.read("burnlaw.json", DocumentFile.bytes(document.toString()));
        ReportWriter.write(((DocumentReading.Read) reading).document(), folder, ReportWriter.Options.DATA_ONLY);
    }

    private void assertOfItsSchema(String file, String schema) throws IOException {
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(SCHEMAS.resolve(schema)), InputFormat.JSON)
                        .validate(Files.readString(folder.resolve(file)), InputFormat.JSON))
                .isEmpty();
    }

    /** Each sentence of the specification that says MUST and is about what this folder has. */
    private Map<String, JsonNode> assertCrate() throws Exception {
        JsonNode file = json(CRATE);
        assertThat(file.at("/@context/0").asText()).isEqualTo("https://w3id.org/ro/crate/1.1/context");
        Map<String, JsonNode> entities = new HashMap<>();
        for (JsonNode entity : file.get("@graph")) {
            assertThat(entity.get("@type").asText()).isNotBlank();
            // "MUST NOT list multiple entities with the same @id"
            assertThat(entities.put(entity.get("@id").asText(), entity)).isNull();
        }
        // flattened: an object within an entity is a reference and nothing else, here to an entity that is described
        entities.values()
                .forEach(entity -> references(entity).forEach(reference -> {
                    assertThat(reference.size()).isEqualTo(1);
                    String to = reference.get("@id").asText();
                    assertThat(entities.containsKey(to) || to.equals("https://w3id.org/ro/crate/1.1"))
                            .as(to)
                            .isTrue();
                }));
        JsonNode descriptor = entities.get(CRATE);
        assertThat(descriptor.get("@type").asText()).isEqualTo("CreativeWork");
        assertThat(descriptor.at("/conformsTo/@id").asText()).isEqualTo("https://w3id.org/ro/crate/1.1");
        assertThat(descriptor.at("/about/@id").asText()).isEqualTo("./");
        JsonNode root = entities.get("./");
        assertThat(root.get("@type").asText()).isEqualTo("Dataset");
        assertThat(root.get("name").asText()).isNotBlank();
        assertThat(root.get("description").asText()).isNotBlank();
        assertThat(root.get("license")).isNotNull();
        assertThatCode(() -> OffsetDateTime.parse(root.get("datePublished").asText()))
                .doesNotThrowAnyException();
        Set<String> parts = new TreeSet<>();
        root.get("hasPart").forEach(part -> parts.add(part.get("@id").asText()));
        for (Map.Entry<String, JsonNode> each : entities.entrySet()) {
            String type = each.getValue().get("@type").asText();
            Path there = folder.resolve(each.getKey().startsWith("http") ? "" : each.getKey());
            if (type.equals("File")) {
                assertThat(parts).contains(each.getKey());
                assertThat(there).isRegularFile();
                if (each.getValue().has("sha256")) {
                    assertThat(each.getValue().get("contentSize").asText()).isEqualTo("" + Files.size(there));
                    assertThat(each.getValue().get("sha256").asText()).isEqualTo(sha256(each.getKey()));
                }
            } else if (type.equals("Dataset") && !each.getKey().equals("./")) {
                assertThat(parts).contains(each.getKey());
                assertThat(there).isDirectory();
            }
        }
        assertThat(entities.get("#laws.csv-4").get("unitText").asText()).isEqualTo("mm/s");
        return entities;
    }

    private static Stream<JsonNode> references(JsonNode entity) {
        return StreamSupport.stream(entity.spliterator(), false)
                .flatMap(member ->
                        member.isArray() ? StreamSupport.stream(member.spliterator(), false) : Stream.of(member))
                .filter(JsonNode::isObject);
    }

    /** Required keys, no other ones, the patterns of their values. */
    private void assertCitation(String licence) throws IOException {
        JsonNode citation = new YAMLMapper().readTree(Files.readString(folder.resolve("CITATION.cff")));
        Set<String> keys = new TreeSet<>();
        citation.fieldNames().forEachRemaining(keys::add);
        assertThat(keys)
                .contains("authors", "cff-version", "message", "title")
                .isSubsetOf(
                        "abstract",
                        "authors",
                        "cff-version",
                        "date-released",
                        "identifiers",
                        "license",
                        "message",
                        "title",
                        "type",
                        "version");
        assertThat(citation.get("cff-version").asText()).isEqualTo("1.2.0");
        assertThat(citation.get("type").asText()).isEqualTo("dataset");
        assertThat(citation.get("date-released").asText()).matches("[0-9]{4}-[01][0-9]-[0-3][0-9]");
        assertThat(citation.get("authors")).hasSize(1);
        assertThat(citation.at("/authors/0").size()).isEqualTo(1);
        assertThat(citation.at("/authors/0/name").asText())
                .isEqualTo(json("burnlaw.json").at("/campaign/prepared_by").asText());
        assertThat(citation.at("/identifiers/0/type").asText()).isEqualTo("other");
        assertThat(citation.at("/identifiers/0/value").asText()).matches("sha256:[0-9a-f]{64}");
        assertThat(citation.path("license").asText(null)).isEqualTo(licence);
    }

    /** The page says the same in the terms of schema.org. */
    private void assertPage() throws Exception {
        String page = Files.readString(folder.resolve("index.html"), StandardCharsets.UTF_8);
        int start = page.indexOf('>', page.indexOf("application/ld+json")) + 1;
        JsonNode data = new JsonMapper().readTree(page.substring(start, page.indexOf("</script>", start)));
        JsonNode document = json("burnlaw.json");
        assertThat(data.at("/identifier/value").asText()).isEqualTo(sha256("burnlaw.json"));
        assertThat(data.get("version").asText())
                .isEqualTo(document.get("created").asText());
        int laws = 0;
        for (JsonNode formulation : document.get("formulations")) {
            for (JsonNode law : formulation.get("use_laws")) {
                JsonNode value = data.at("/variableMeasured/" + 3 * laws);
                assertThat(value.get("@type").asText()).isEqualTo("PropertyValue");
                assertThat(value.get("value").asDouble())
                        .isEqualTo(law.at("/coefficient/value").asDouble());
                assertThat(value.get("maxValue").asDouble())
                        .isEqualTo(law.at("/coefficient/high").asDouble());
                assertThat(value.get("unitText").asText()).isEqualTo("mm/s, with P absolute in MPa");
                laws++;
            }
        }
        assertThat(data.get("variableMeasured")).hasSize(3 * laws);
    }

    private String sha256(String file) throws Exception {
        byte[] bytes = Files.readAllBytes(folder.resolve(file));
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    private JsonNode json(String file) throws IOException {
        return new JsonMapper().readTree(Files.readString(folder.resolve(file)));
    }
}
