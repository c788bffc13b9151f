package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.Progress;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.PlannedThroat;
import io.burnlaw.planning.Planner;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.publish.reading.PublishedFormulation;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanCommandTest {

    private static final Path SAMPLE_RUNS = Path.of("..", "sample-runs");

    private static final Path SCHEMA = Path.of("..", "docs", "schema", "burnlaw-characterization-1.schema.json");

    private static Characterization sugar;
    private static Path document;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeAll
    static void characterize(@TempDir Path folder) throws IOException {
        CampaignResult result = Characterizer.characterize(
                CampaignReader.read(SAMPLE_RUNS.resolve("new-sugar-source")).orElseThrow(), 2, Progress.silent());
        sugar = CharacterizationDocument.result(result, "test", Optional.empty(), false);
        document = folder.resolve("burnlaw.json");
        Files.writeString(document, DocumentFile.text(sugar));
    }

    private int plan(String... arguments) {
        List<String> all = new ArrayList<>(List.of("plan"));
        all.addAll(List.of(arguments));
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(all.toArray(String[]::new));
    }

    private int guess(String rate, String exponent, String... more) {
        List<String> all = new ArrayList<>(List.of("--rate", rate, "--exponent", exponent));
        all.addAll(List.of("--density", "1.78 g/cm3", "--characteristic-velocity", "880 m/s"));
        all.addAll(List.of("--grain", "bates", "--segments", "2", "--outer-diameter", "38 mm"));
        all.addAll(List.of("--core-diameter", "14 mm", "--segment-length", "62 mm"));
        all.addAll(List.of(more));
        return plan(all.toArray(String[]::new));
    }

    @Test
    void aDocumentIsPlannedFromAsItWasPlannedItself() {
        assertThat(plan(document.toString())).isZero();
        assertThat(err.toString()).isEmpty();
        assertThat(out.toString())
                .contains("Next firing of date: a throat of", "allowed: 4.77 MPa absolute", "proof test", "local law");
        var published = sugar.plans().get(0);
        Plan.Planned again = (Plan.Planned) Planner.plan(
                PublishedFormulation.planBasis(sugar.formulations().get(0), published, sugar.campaign())
                        .orElseThrow(),
                PlanOptions.defaults());
        assertThat(again.ladder()).hasSameSizeAs(published.ladder());
        for (int i = 0; i < again.ladder().size(); i++) {
            PlannedThroat throat = again.ladder().get(i);
            var before = published.ladder().get(i);
            assertThat(throat.diameter() * 1e3)
                    .isEqualTo(before.throatDiameter().value());
            // 0.5 %: the grain comes back as a table, and the shared error of the rates as part of their covariance
            assertThat(throat.maxPressure().high() / 1e6)
                    .isCloseTo(before.maxPressure().high(), withPercentage(0.5));
        }
    }

    @Test
    void aThroatAndAPressureAreAnswered() {
        assertThat(plan(document.toString(), "--throat", "7.1 mm", "--pressure", "450 psi"))
                .isZero();
        assertThat(out.toString())
                .contains("a throat of 7.1 mm:", "a mean of 3.103 MPa absolute:", "exact diameter: 6.");
    }

    @Test
    void whatTheCaseCannotStandIsRefused() {
        assertThat(plan(document.toString(), "--throat", "5 mm", "--pressure", "6 MPa"))
                .isEqualTo(1);
        assertThat(out.toString())
                .contains("Not to be drilled", "No throat is named for 6.00 MPa: it is above 4.77 MPa", "NO");
    }

    @Test
    void aWeakerCaseAllowsLess() {
        assertThat(plan(document.toString(), "--case-limit", "300 psi", "--safety-factor", "1.5"))
                .isZero();
        assertThat(out.toString()).contains("allowed: 1.48 MPa absolute, the case limit of 2.07 MPa");
    }

    @Test
    void theLadderSpansWhatIsAskedAndSaysWhereItCannot() {
        assertThat(plan(document.toString(), "--ladder", "1 MPa to 3 MPa", "--rungs", "3", "--drills", "metric,number"))
                .isZero();
        assertThat(out.toString())
                .doesNotContain(" in,")
                .doesNotContain("letter")
                .contains("6.5 mm");
        assertThat(plan(document.toString(), "--ladder", "1 MPa to 9 MPa")).isZero();
        assertThat(out.toString()).contains("You asked for a ladder from 1.00 to 9.00 MPa");
    }

    @Test
    void withoutABreakNoneIsSharpened() {
        assertThat(plan(document.toString(), "--sharpen", "break")).isZero();
        assertThat(out.toString()).contains("No firing within the allowed pressures can narrow a break");
    }

    @Test
    void moreConfidenceAllowsLess() {
        plan(document.toString());
        String usual = smallest(out.toString());
        out.getBuffer().setLength(0);
        assertThat(plan(document.toString(), "--confidence", "99.5 %")).isZero();
        assertThat(out.toString()).contains("peak [MPa] (99.5 %)", "upper end of the 99.5 % prediction");
        assertThat(Double.parseDouble(smallest(out.toString()))).isGreaterThan(Double.parseDouble(usual));
    }

    private static String smallest(String said) {
        return said.replaceAll("(?s).*Do not go below a throat of ([0-9.]+) mm.*", "$1");
    }

    @Test
    void aPlanAsDataIsADocumentLikeAnyOther(@TempDir Path folder) throws IOException {
        assertThat(plan(
                        document.toString(),
                        "--json",
                        "--case-limit",
                        "5 MPa",
                        "--throat",
                        "7.1 mm",
                        "--pressure",
                        "6 MPa"))
                .isEqualTo(1);
        JsonNode said = valid(out.toString());
        assertThat(said.at("/campaign/case_pressure_limit/value").asDouble()).isEqualTo(5);
        assertThat(said.at("/plans/0/allowed_because").asText()).contains("case limit of 5.00 MPa");
        assertThat(said.at("/plans/0/answers/0/throat/throat_diameter/value").asDouble())
                .isEqualTo(7.1);
        assertThat(said.at("/plans/0/answers/1/reason").asText()).contains("No throat is named for 6.00 MPa");
        assertThat(said.at("/plans/0/cautions").toString()).contains("proof test", "local law");
        // what was printed can be planned from and drawn again
        Path again = folder.resolve("plan.json");
        Files.writeString(again, out.toString());
        out.getBuffer().setLength(0);
        assertThat(plan(again.toString())).as(err.toString()).isZero();
        assertThat(out.toString()).contains("the case limit of 5.00 MPa");
        assertThat(Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                        .execute(
                                "render",
                                again.toString(),
                                "-o",
                                folder.resolve("report").toString()))
                .isZero();
        assertThat(Files.readString(folder.resolve("report/index.html")))
                .contains("Answers to your questions", "No throat is named for 6.00");
    }

    @Test
    void aFirstGuessAsDataHoldsThePlanAndNoLaw() throws IOException {
        assertThat(guess("5.7 ± 0.6 mm/s at 1 MPa", "0.35 ± 0.05", "--case-limit", "7 MPa", "--json"))
                .isZero();
        JsonNode said = valid(out.toString());
        assertThat(said.at("/formulations/0/single_law").isMissingNode()).isTrue();
        assertThat(said.at("/formulations/0/verdict").asText()).contains("Nothing was measured", "5.70 mm/s");
        assertThat(said.at("/plans/0/next/throat_diameter/value").asDouble()).isPositive();
    }

    private static JsonNode valid(String text) throws IOException {
        var schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(SCHEMA), InputFormat.JSON);
        assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
        return new ObjectMapper().readTree(text);
    }

    @Test
    void aFirstGuessIsPlannedWithItsUncertainty() {
        assertThat(guess("5.7 ± 0.6 mm/s at 1 MPa", "0.35 ± 0.05", "--case-limit", "7 MPa"))
                .as(err.toString())
                .isZero();
        assertThat(out.toString()).contains("Next firing of the first guess", "The law is a first guess");
    }

    @Test
    void theSameGuessInOtherUnitsGivesTheSamePlan() {
        guess("5.7 ± 0.57 mm/s at 1 MPa", "0.35 ± 0.05", "--case-limit", "7 MPa");
        String metric = out.toString();
        out.getBuffer().setLength(0);
        guess("0.22440945 ± 0.022440945 in/s at 145.037738 psi", "0.35 ± 0.05", "--case-limit", "1015.264165 psi");
        assertThat(out.toString()).isEqualTo(metric);
    }

    @Test
    void anExponentOfOneIsRefusedWithTheReason() {
        assertThat(guess("5.7 mm/s at 1 MPa", "1.05 ± 0.01", "--case-limit", "7 MPa"))
                .isEqualTo(1);
        assertThat(out.toString())
                .contains("No throat is named: the exponent is 1.05", "no motor has a steady pressure");
    }

    @Test
    void aGuessWithoutALimitOfTheCaseIsRefused() {
        assertThat(guess("5.7 mm/s at 1 MPa", "0.35")).isEqualTo(1);
        assertThat(out.toString()).contains("State the limit of the case");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --rungs 1                       | --rungs 1: a ladder has 2 to 50
            --ladder 1                      | --ladder 1: write it as in --ladder "1 MPa to 4 MPa"
            --ladder 4_MPa_to_1_MPa         | the second pressure must be the higher one
            --throat 7                      | --throat 7: the number has no unit
            --throat 7_MPa                  | --throat 7 MPa
            --throat 0_mm                   | give a length above zero
            --safety-factor 0.5             | it must be at least 1
            --case-limit 7_mm               | --case-limit 7 mm
            --case-limit 7_±_3_MPa          | a limit cannot have an uncertainty
            --case-limit 7_Pa               | this value is impossible; check its unit
            --throat 7_km                   | --throat 7 km
            --density 1.78_kg/m3            | this value is impossible; check its unit
            --characteristic-velocity 8_m/s | this value is impossible; check its unit
            --formulation dates             | the campaign has date
            --drills metrical               | --drills
            --sharpen law                   | --sharpen
            --rate 5_mm/s_at_1_MPa          | not both
            --grain bates                   | outer-diameter is missing
            --grain cube                    | no grain is called 'cube'
            --core-diameter 20_mm           | --core-diameter needs --grain as well
            --density 1.9_g/cm3             | --density needs --grain as well
            --ambient-pressure 90_kPa       | --ambient-pressure needs --grain as well
            --case-limit 1000_MPa           | this value is impossible; check its unit
            --pressure 400_psi_gauge        | the unit psi gauge is not known; write a number and its unit
            --confidence 80                 | --confidence 80: write a percentage between 90 and 100
            --confidence 0.95               | --confidence 0.95: write a percentage
            --confidence high               | --confidence high: write a percentage
            """)
    void whatCannotBeMeantIsToldAndNothingElseIsPrinted(String options, String message) {
        List<String> all = new ArrayList<>(List.of(document.toString()));
        for (String word : options.split(" ")) {
            all.add(word.replace('_', ' '));
        }
        assertThat(plan(all.toArray(String[]::new))).isEqualTo(2);
        assertThat(err.toString()).contains(message).contains("--help").doesNotContain("Exception");
        assertThat(out.toString()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "density": { "value": 1              | "density": { "value": -1
            "safety_factor": 1.5                  | "safety_factor": 0
            "weighting": "proportional"           | "weighting": "by eye"
            "web": [ 0.0,                         | "web": [ 5.0,
            "reference_pressure": { "value":     | "reference_pressure": { "value": -
            """)
    void aSpoiledDocumentIsToldAndNotPlannedFrom(String what, String instead, @TempDir Path folder) throws IOException {
        String squeezed = Files.readString(document).replaceAll("\\s+", " ");
        assertThat(squeezed.contains(what)).as(what).isTrue();
        Path spoiled = folder.resolve("spoiled.json");
        Files.writeString(spoiled, squeezed.replace(what, instead));
        assertThat(plan(spoiled.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("spoiled.json").contains("mend it").doesNotContain("Exception");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aGuessThatCannotBeMeantIsTold() {
        assertThat(guess("5.7 m/s at 1 MPa", "0.35", "--case-limit", "7 MPa")).isEqualTo(2);
        assertThat(guess("5.7 mm/s at 1 MPa", "35", "--case-limit", "7 MPa")).isEqualTo(2);
        assertThat(guess("5.7 ± 6 mm/s at 1 MPa", "0.35", "--case-limit", "7 MPa"))
                .isEqualTo(2);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void nothingToPlanFromIsTold() {
        assertThat(plan()).isEqualTo(2);
        assertThat(err.toString()).contains("name a campaign or a document, or give a first guess");
        assertThat(plan("nowhere.json")).isEqualTo(2);
        assertThat(err.toString()).contains("no such file");
        assertThat(plan("--exponent", "0.3")).isEqualTo(2);
        assertThat(err.toString()).contains("a first guess needs --rate");
    }
}
