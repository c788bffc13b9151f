package io.burnlaw.campaign.reading;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class CampaignSchemaTest {

    private static final String NAME = "burnlaw-campaign-1.schema.json";
    private static final Path PUBLISHED = Path.of("../docs/schema", NAME);
    private static final Path SKELETON = Path.of("src/main/resources/io/burnlaw/cli/skeleton/campaign.yaml");
    private static final String HEAD = """
            format: burnlaw-campaign/1
            title: Invented
            formulations:
              base:
                density: 1.80 g/cm3
            """;

    @TempDir
    Path folder;

    @Test
    void theJarShipsWhatIsPublished() {
        assertThat(Path.of("src/main/resources/io/burnlaw/campaign", NAME)).hasSameBinaryContentAs(PUBLISHED);
    }

    @Test
    void theSchemaIsOneByItsOwnDialect() throws IOException {
        Schema dialect = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(dialect.validate(published())).isEmpty();
    }

    static Stream<Arguments> itHasTheKeysThatTheReaderKnows() {
        return Stream.of(
                Arguments.of("", CampaignKeys.CAMPAIGN),
                Arguments.of("/$defs/formulation", CampaignKeys.FORMULATION),
                Arguments.of("/$defs/trace", CampaignKeys.TRACE),
                Arguments.of("/$defs/hardware", CampaignKeys.HARDWARE),
                Arguments.of("/$defs/reduction", CampaignKeys.REDUCTION),
                Arguments.of("/$defs/fit", CampaignKeys.FIT));
    }

    @ParameterizedTest
    @MethodSource
    void itHasTheKeysThatTheReaderKnows(String place, List<String> keys) throws IOException {
        List<String> published = new ArrayList<>();
        published().at(place + "/properties").fieldNames().forEachRemaining(published::add);
        assertThat(published).containsExactlyInAnyOrderElementsOf(keys);
    }

    static Stream<Arguments> itHasTheWordsThatTheReaderKnows() {
        return Stream.of(
                Arguments.of("trace/properties/pressure_kind", Choice.words(PressureKind.class)),
                Arguments.of("reduction/properties/method", Choice.words(ReductionSettings.Method.class)),
                Arguments.of("reduction/properties/burnout_event", Choice.words(ReductionSettings.BurnoutEvent.class)),
                Arguments.of("fit/properties/weighting", Choice.words(Weighting.class)));
    }

    @ParameterizedTest
    @MethodSource
    void itHasTheWordsThatTheReaderKnows(String place, List<String> words) throws IOException {
        List<String> published = new ArrayList<>();
        published().at("/$defs/" + place + "/enum").forEach(word -> published.add(word.textValue()));
        assertThat(published).containsExactlyInAnyOrderElementsOf(words);
    }

    static Stream<Path> everyCampaignThatIsShippedIsValid() throws IOException {
        try (Stream<Path> samples = Files.list(Path.of("../sample-runs"))) {
            return Stream.concat(
                    Stream.of(SKELETON),
                    samples.map(sample -> sample.resolve("campaign.yaml")).filter(Files::exists))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource
    void everyCampaignThatIsShippedIsValid(Path yaml) throws IOException {
        assertThat(errors(Files.readString(yaml))).isEmpty();
    }

    @Test
    void theExampleOfTheDocsIsValid() throws IOException {
        String docs = Files.readString(Path.of("../docs/formats.md"));
        int start = docs.indexOf("```yaml\nformat: burnlaw-campaign/1") + "```yaml\n".length();
        assertThat(errors(docs.substring(start, docs.indexOf("```", start)))).isEmpty();
    }

    /** What the reader takes the schema takes, and what it refuses for its form the schema refuses. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "true  | ambient_pressure: 98.6 kPa",
                "true  | ambient_pressure: '98,6 kPa'",
                "true  | ambient_pressure: 98.6 ± 0.2 kPa",
                "true  | ambient_pressure: 29.1 inHg",
                "true  | reference_temperature: 21 °C",
                "true  | reference_temperature: 68 degF",
                "true  | fit: {confidence: 90 %, seed: 7, robust: yes, weighting: measured, pressure_errors: none}",
                "true  | fit: {confidence: 0.9}",
                "true  | hardware: {case_pressure_limit: 800 psi, safety_factor: 2}",
                "true  | 'trace: {pressure_kind: gauge, calibration: {0.5 V: 0 bar, 4.5 V: 100 bar}}'",
                "true  | 'trace: {pressure_uncertainty: 0.5 % of 1000 psi}'",
                "false | ambient_pressure: 98.6",
                "false | ambient_pressure: about one bar",
                "false | reference_temperature: 21",
                "false | ambient_presure: 98.6 kPa",
                "false | fit: {confidence: high}",
                "false | fit: {weighting: equal}",
                "false | hardware: {case_pressure_limit: 5}",
                "false | 'trace: {pressure_kind: relative}'"
            })
    void schemaAndReaderAreOfOneMind(boolean good, String line) throws IOException {
        String yaml = HEAD + line + "\n";
        Files.writeString(folder.resolve("campaign.yaml"), yaml);
        Files.writeString(
                folder.resolve("points.csv"),
                "point,formulation,pressure [MPa],rate [mm/s],pressure_kind\n1,base,3,6,absolute\n");
        assertThat(CampaignReader.read(folder) instanceof Outcome.Given)
                .as("reader")
                .isEqualTo(good);
        assertThat(errors(yaml).isEmpty()).as("schema: %s", errors(yaml)).isEqualTo(good);
    }

    private static JsonNode published() throws IOException {
        return new JsonMapper().readTree(Files.readString(PUBLISHED));
    }

    private static List<Error> errors(String yaml) throws IOException {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(published());
        return schema.validate(new YAMLMapper().readTree(yaml));
    }
}
