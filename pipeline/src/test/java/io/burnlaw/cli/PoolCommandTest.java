package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Campaigns of one formulation, simulated with rates that differ by a few per cent between them, pooled. */
class PoolCommandTest {

    private static final Path SCENARIO = Path.of("..", "sample-runs", "four-batches", "scenario.yaml");

    @TempDir
    private static Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeAll
    static void campaigns() throws IOException {
        report("one", 11, 4.40, "1.785", true);
        report("two", 12, 4.55, "1.785", true);
        report("three", 13, 4.50, "1.785", true);
        report("dense", 14, 4.50, "1.885", true);
        report("named", 15, 4.50, "1.785", false);
    }

    /** A report of a campaign; where it is one batch its rows name none. */
    private static void report(String name, int seed, double rate, String density, boolean oneBatch)
            throws IOException {
        String text = Files.readString(SCENARIO)
                .replace("seed: 20261129", "seed: " + seed)
                .replace("rate: 4.500", "rate: " + rate)
                .replace("density: 1.785", "density: " + density);
        if (oneBatch) {
            text = text.replaceAll("batch: \\w+, ", "");
        }
        Path scenario = folder.resolve(name + ".yaml");
        Files.writeString(scenario, text);
        StringWriter all = new StringWriter();
        var command = Burnlaw.commandLine(new PrintWriter(all, true), new PrintWriter(all, true));
        Path campaign = folder.resolve(name + "-campaign");
        assertThat(command.execute("simulate", scenario.toString(), "-o", campaign.toString()))
                .as(all.toString())
                .isZero();
        Path report = folder.resolve(name);
        assertThat(command.execute("run", campaign.toString(), "-o", report.toString(), "--data-only"))
                .as(all.toString())
                .isZero();
    }

    private int burnlaw(String... arguments) {
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(arguments);
    }

    private static String of(String report) {
        return folder.resolve(report).resolve("burnlaw.json").toString();
    }

    private JsonNode pooled(String... reports) throws IOException {
        String[] words = new String[reports.length + 2];
        words[0] = "pool";
        for (int i = 0; i < reports.length; i++) {
            words[i + 1] = of(reports[i]);
        }
        words[reports.length + 1] = "--json";
        assertThat(burnlaw(words)).as(err.toString()).isZero();
        return new ObjectMapper().readTree(out.toString()).get("formulations").get(0);
    }

    @Test
    void campaignsThatNameNoBatchAreABatchEach() throws IOException {
        JsonNode formulation = pooled("one", "two", "three");
        assertThat(formulation.get("batches").get("count").asInt()).isEqualTo(3);
        assertThat(formulation.get("points")).hasSize(48);
        JsonNode law = formulation.get("use_laws").get(0);
        assertThat(law.get("interval_method").asText()).isEqualTo("kenward-roger");
        // the three true coefficients are 4.40, 4.50 and 4.55 mm/s
        assertThat(law.get("coefficient").get("low").asDouble()).isLessThan(4.48);
        assertThat(law.get("coefficient").get("high").asDouble()).isGreaterThan(4.48);
        assertThat(law.get("coefficient").get("value").asDouble()).isBetween(4.40, 4.55);
        assertThat(law.get("exponent").get("low").asDouble()).isLessThan(0.35);
        assertThat(law.get("exponent").get("high").asDouble()).isGreaterThan(0.35);
    }

    @Test
    void batchesOfACampaignStayApartFromThoseOfOthers() throws IOException {
        JsonNode formulation = pooled("one", "named");
        assertThat(formulation.get("batches").get("members").findValuesAsText("id"))
                .containsExactly("April", "June", "March", "May", "one");
    }

    @Test
    void eachCampaignStandsInTheProvenance() throws IOException {
        pooled("one", "two");
        JsonNode document = new ObjectMapper().readTree(out.toString());
        assertThat(document.get("inputs").findValuesAsText("path")).containsExactly(of("one"), of("two"));
        assertThat(document.get("inputs").findValuesAsText("sha256")).allMatch(each -> each.length() == 64);
        assertThat(document.get("campaign").get("notes").toString()).contains("16 of its points are pooled");
        assertThat(document.get("firings")).hasSize(32);
        assertThat(document.get("firings").get(0).get("id").asText()).isEqualTo("MAR-1 (one)");
    }

    @Test
    void reportComparisonAndPlanTakeThePooledDocument() throws IOException {
        Path report = folder.resolve("all");
        assertThat(burnlaw("pool", of("one"), of("two"), of("three"), "-o", report.toString(), "--reproducible"))
                .as(err.toString())
                .isZero();
        assertThat(report.resolve("index.html")).exists();
        String text = Files.readString(report.resolve("burnlaw.json"));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(
                                Files.readString(
                                        Path.of("..", "docs", "schema", "burnlaw-characterization-1.schema.json")),
                                InputFormat.JSON)
                        .validate(text, InputFormat.JSON))
                .isEmpty();
        assertThat(burnlaw("plan", report.toString())).as(err.toString()).isZero();
        assertThat(out.toString()).contains("Do not go below a throat of");
        assertThat(burnlaw("compare", report.toString(), of("named")))
                .as(err.toString())
                .isZero();
        assertThat(burnlaw(
                        "render",
                        report.resolve("burnlaw.json").toString(),
                        "-o",
                        folder.resolve("again").toString()))
                .as(err.toString())
                .isZero();
        assertThat(folder.resolve("again").resolve("index.html")).hasSameBinaryContentAs(report.resolve("index.html"));
    }

    @Test
    void whatIsNotOneFormulationIsRefusedWithTheReason() {
        assertThat(burnlaw("pool", of("one"), of("dense"))).isEqualTo(2);
        assertThat(err.toString())
                .contains("its density differs too much for one propellant")
                .contains("1.78")
                .contains("1.88");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void theSameMeasurementsTwiceAreRefused() {
        assertThat(burnlaw("pool", of("one"), of("one"))).isEqualTo(2);
        assertThat(err.toString()).contains("16 in common").contains("leave one of the two out");
    }

    @Test
    void aFormulationThatOneDocumentDoesNotHaveIsNamed() {
        assertThat(burnlaw("pool", of("one"), of("two"), "--formulation", "plum"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("there is no formulation plum").contains("quince");
    }

    @Test
    void aCampaignIsToBeRunFirst() {
        String campaign = folder.resolve("one-campaign").toString();
        assertThat(burnlaw("pool", campaign, of("two"))).isEqualTo(2);
        assertThat(err.toString()).contains("this is a campaign, not a report").contains("run " + campaign);
    }

    @Test
    void oneDocumentIsTooFew() {
        assertThat(burnlaw("pool", of("one"))).isEqualTo(2);
        assertThat(err.toString()).contains("two documents or more");
        assertThat(List.of(out.toString().split("\n"))).containsExactly("");
    }
}
