package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Invented campaigns of points timed by eye, run, and compared from what the runs wrote. */
class CompareCommandTest {

    private static final Path SCHEMA = Path.of("..", "docs", "schema", "burnlaw-characterization-1.schema.json");

    @TempDir
    private static Path folder;

    private StringWriter out;
    private StringWriter err;

    @BeforeAll
    static void runTheCampaigns() throws IOException {
        campaign("spring", 21, formulation("date", 5.0, 0.4, 1, 6, 11));
        campaign("autumn", 21, formulation("date", 6.0, 0.4, 1, 6, 12));
        campaign("winter", 4, formulation("date", 5.0, 0.4, 1, 6, 13));
        campaign("high", 21, formulation("fig", 5.0, 0.4, 20, 40, 14));
        campaign(
                "levels",
                21,
                formulation("plain", 5.0, 0.4, 1, 6, 15),
                formulation("iron-1", 5.5, 0.4, 1, 6, 16),
                formulation("iron-2", 6.0, 0.4, 1, 6, 17));
    }

    private record Invented(String id, List<String> rows) {}

    private static Invented formulation(
            String id, double coefficient, double exponent, double low, double high, int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            double pressure = low * Math.pow(high / low, i / 6.0);
            double rate = coefficient * Math.pow(pressure, exponent) * Math.exp(0.01 * random.nextGaussian());
            rows.add(String.format(Locale.ROOT, "%s-%d,%s,%.4f,%.4f", id, i, id, pressure, rate));
        }
        return new Invented(id, rows);
    }

    private static void campaign(String name, int celsius, Invented... formulations) throws IOException {
        Path campaign = Files.createDirectories(folder.resolve("in").resolve(name));
        StringBuilder yaml = new StringBuilder("format: burnlaw-campaign/1\ntitle: Invented, " + name + "\n"
                + "ambient_pressure: 101.3 kPa\nformulations:\n");
        StringBuilder points =
                new StringBuilder("point,formulation,pressure [MPa],rate [mm/s],pressure_kind,temperature [degC]\n");
        for (Invented each : formulations) {
            yaml.append("  ")
                    .append(each.id())
                    .append(":\n    title: Invented ")
                    .append(each.id())
                    .append('\n');
            if (each.id().startsWith("iron-")) {
                yaml.append("    additive: invented iron\n    additive_fraction: ")
                        .append(each.id().substring(5))
                        .append(" %\n    compare_with: plain\n");
            }
            each.rows()
                    .forEach(row -> points.append(row)
                            .append(",absolute,")
                            .append(celsius)
                            .append('\n'));
        }
        Files.writeString(campaign.resolve("campaign.yaml"), yaml);
        Files.writeString(campaign.resolve("points.csv"), points);
        StringWriter said = new StringWriter();
        List<String> words = new ArrayList<>(
                List.of("run", campaign.toString(), "-o", folder.resolve(name).toString()));
        if (!name.equals("autumn")) {
            words.add("--data-only");
        }
        int code = Burnlaw.commandLine(new PrintWriter(said, true), new PrintWriter(said, true))
                .execute(words.toArray(String[]::new));
        assertThat(code).as(said.toString()).isZero();
    }

    @BeforeEach
    void listen() {
        out = new StringWriter();
        err = new StringWriter();
    }

    private int compare(String... words) {
        List<String> all = new ArrayList<>(List.of("compare"));
        for (String word : words) {
            all.add(
                    word.matches(".*[a-z]\\.[a-z]+|\\./.*")
                            ? folder.resolve(word).toString()
                            : word);
        }
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(all.toArray(String[]::new));
    }

    private JsonNode document(String... words) throws IOException {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--json", "--reproducible"));
        assertThat(compare(all.toArray(String[]::new))).as(err.toString()).isIn(0, 1);
        return JsonMapper.builder().build().readTree(out.toString());
    }

    @Test
    void aRiseOfAFifthBetweenTwoCampaignsIsShown() {
        assertThat(compare("spring/burnlaw.json", "autumn/index.html")).isZero();
        assertThat(out.toString())
                .contains("date (autumn) differs from date (spring) between 1.00 and 6.00 MPa")
                .contains("% faster")
                .contains("The campaigns were measured separately")
                .doesNotContain("°C");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void theSameLawInAnotherCampaignIsNoDifferenceAndItsTemperatureIsACaveat() {
        assertThat(compare("spring/burnlaw.json", "winter/burnlaw.json")).isZero();
        assertThat(out.toString())
                .contains("No difference shown between date (winter) and date (spring)")
                .contains("This test detects changes of the rate above")
                .contains("date (winter) are for 4.0 °C, those of date (spring) for 21.0 °C");
    }

    @Test
    void severalCandidatesAreOneFamily() throws IOException {
        JsonNode document = document("spring/burnlaw.json", "autumn/burnlaw.json", "levels/burnlaw.json");
        assertThat(document.at("/comparisons")).hasSize(4);
        assertThat(document.at("/comparisons/0/verdict").asText()).contains("after correction for 4 tests");
        assertThat(document.at("/dose_trends/0/additive").asText()).isEqualTo("invented iron");
        assertThat(document.at("/inputs")).hasSize(3);
    }

    @Test
    void oneDocumentIsComparedWithinItselfAsItsRunDid() throws IOException {
        JsonNode run = JsonMapper.builder()
                .build()
                .readTree(folder.resolve("levels/burnlaw.json").toFile());
        JsonNode compared = document("levels/burnlaw.json", "--baseline", "plain");
        for (int i = 0; i < 2; i++) {
            JsonNode there = run.at("/comparisons/" + i);
            JsonNode here = compared.at("/comparisons/" + i);
            assertThat(here.at("/verdict")).isEqualTo(there.at("/verdict"));
            // the points went through MPa and mm/s and back, which costs a last digit or two
            assertThat(here.at("/tests/coincident/statistic").asDouble())
                    .isCloseTo(there.at("/tests/coincident/statistic").asDouble(), offset(1e-6));
            assertThat(here.at("/exponent_difference/value").asDouble())
                    .isCloseTo(there.at("/exponent_difference/value").asDouble(), offset(1e-9));
        }
        assertThat(compared.at("/dose_trends/0/sentence")).isEqualTo(run.at("/dose_trends/0/sentence"));
    }

    @Test
    void baselineAndCandidateAreChosenByName() throws IOException {
        JsonNode document = document("levels/burnlaw.json", "--baseline", "iron-1", "--candidate", "iron-2");
        assertThat(document.at("/comparisons")).hasSize(1);
        assertThat(document.at("/comparisons/0/baseline").asText()).isEqualTo("iron-1");
        assertThat(document.at("/comparisons/0/candidate").asText()).isEqualTo("iron-2");
    }

    @Test
    void confidenceWidensTheBand() throws IOException {
        double usual = document("spring/burnlaw.json", "autumn/burnlaw.json")
                .at("/comparisons/0/ratio/0/high")
                .asDouble();
        listen();
        double wider = document("spring/burnlaw.json", "autumn/burnlaw.json", "--confidence", "99")
                .at("/comparisons/0/ratio/0/high")
                .asDouble();
        assertThat(wider).isGreaterThan(usual);
    }

    @Test
    void theDocumentIsOneThatAnybodyCanRead() throws IOException {
        document("spring/burnlaw.json", "autumn/burnlaw.json");
        var schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(SCHEMA), InputFormat.JSON);
        assertThat(schema.validate(out.toString(), InputFormat.JSON)).isEmpty();
    }

    @Test
    void theReportOfAComparisonCarriesItsDocument() {
        assertThat(compare("spring/burnlaw.json", "autumn/burnlaw.json", "-o", "./both"))
                .isZero();
        assertThat(folder.resolve("both/index.html")).content().contains("date (autumn) against date (spring)");
        assertThat(folder.resolve("both/charts")).isDirectoryContaining("glob:**/ratio-1.svg");
        assertThat(DocumentFile.read(folder.resolve("both/index.html"))).isInstanceOf(DocumentReading.Read.class);
        assertThat(out.toString()).contains("written: ");
    }

    @Test
    void noSharedPressuresIsAReasonAndNoNumber() throws IOException {
        assertThat(compare("spring/burnlaw.json", "high/burnlaw.json")).isEqualTo(1);
        assertThat(out.toString())
                .contains("fig and date share no range of pressures (20.0 to 40.0 MPa against 1.00 to 6.00 MPa)")
                .doesNotContain("p, Holm");
    }

    @Test
    void theSameMeasurementsTwiceAreRefused() throws IOException {
        Files.copy(folder.resolve("spring/burnlaw.json"), folder.resolve("copy.json"));
        assertThat(compare("spring/burnlaw.json", "copy.json")).isEqualTo(2);
        assertThat(err.toString())
                .contains("copy.json: date (copy.json): its measurements are those of date (spring)")
                .contains("7 in common: date-0, date-1");
        listen();
        assertThat(compare("levels/burnlaw.json", "--baseline", "plain", "--candidate", "plain"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("plain is the baseline itself").contains("--candidate iron-1");
    }

    @Test
    void anUnknownOrUnsaidFormulationNamesTheKnownOnes() {
        assertThat(compare("levels/burnlaw.json", "--baseline", "lead")).isEqualTo(2);
        assertThat(err.toString())
                .contains("there is no formulation lead")
                .contains("plain, iron-1, iron-2")
                .contains("--baseline plain");
        listen();
        assertThat(compare("levels/burnlaw.json", "spring/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString()).contains("it is not clear which formulation is the baseline");
        listen();
        assertThat(compare("spring/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString()).contains("there is nothing to compare date with");
        listen();
        assertThat(compare("spring/burnlaw.json", "autumn/burnlaw.json", "--candidate", "iron-9"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("there is no formulation iron-9 to compare");
    }

    @Test
    void whatIsNoDocumentIsRefusedWithAllItsFellows() throws IOException {
        Files.writeString(folder.resolve("letter.txt"), "Dear all,");
        Files.writeString(folder.resolve("other.json"), "{\"format\": \"something-else/1\"}");
        Files.writeString(folder.resolve("newer.json"), "{\"format\": \"burnlaw-characterization/2\"}");
        Files.writeString(folder.resolve("page.html"), "<!doctype html><title>x</title>");
        assertThat(compare(
                        "letter.txt", "other.json", "newer.json", "page.html", "missing.json", "spring/burnlaw.json"))
                .isEqualTo(2);
        assertThat(err.toString())
                .contains("letter.txt:1:")
                .contains("not JSON")
                .contains("not a burnlaw document")
                .contains("format burnlaw-characterization/2")
                .contains("a document of another version")
                .contains("the page contains no document")
                .contains("missing.json: the file cannot be read")
                .doesNotContain("Exception");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void anEditedDocumentIsRefusedByItsWords() throws IOException {
        String document = Files.readString(folder.resolve("spring/burnlaw.json"));
        Files.writeString(folder.resolve("unit.json"), document.replace("\"MPa\"", "\"furlong\""));
        assertThat(compare("unit.json", "autumn/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString())
                .contains("unit.json: date")
                .contains("furlong")
                .doesNotContain("fault");
        listen();
        int render = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(
                        "render",
                        folder.resolve("unit.json").toString(),
                        "-o",
                        folder.resolve("drawn").toString());
        assertThat(render).isEqualTo(2);
        assertThat(err.toString()).contains("furlong").doesNotContain("fault");
        assertThat(folder.resolve("drawn")).doesNotExist();
        listen();
        Files.writeString(folder.resolve("word.json"), document.replace("\"proportional\"", "\"heavy\""));
        assertThat(compare("word.json", "autumn/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString()).contains("the weighting heavy");
        listen();
        Files.writeString(
                folder.resolve("matrix.json"),
                document.replaceAll("\"covariance\": \\[ \\[[^]]*\\], ", "\"covariance\": [ "));
        assertThat(compare("matrix.json", "autumn/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString()).contains("two by two");
    }

    @Test
    void aNumberThatNoDoubleHoldsIsRefusedWithItsPlace() throws IOException {
        String document = Files.readString(folder.resolve("spring/burnlaw.json"));
        Files.writeString(
                folder.resolve("huge.json"),
                document.replaceFirst("\"residual_scatter\": [^,]*", "\"residual_scatter\": 1e999"));
        assertThat(compare("huge.json", "autumn/burnlaw.json")).isEqualTo(2);
        assertThat(err.toString())
                .contains("huge.json:", "too large", "residual_scatter")
                .doesNotContain("fault");
    }

    @Test
    void anImpossibleConfidenceIsRefused() {
        assertThat(compare("spring/burnlaw.json", "autumn/burnlaw.json", "--confidence", "0.95"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("--confidence 0.95").contains("between 50 and 100");
    }
}
