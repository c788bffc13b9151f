package io.burnlaw.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.finding.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScenarioReaderTest {

    private static final String GOOD = """
            format: burnlaw-scenario/1
            title: A test
            seed: 1
            formulations:
              one:
                density: 1.8 g/cm3
                characteristic_velocity: 900 m/s
                law:
                  low: {rate: 4 mm/s, at: 1 MPa, exponent: 0.5}
                  high: {from: 2 MPa, exponent: 0.1}
            grain: {kind: bates, outer_diameter: 40 mm, core_diameter: 15 mm, segment_length: 60 mm}
            firings:
              F1: {formulation: one, throat: 8 mm}
            """;

    @TempDir
    private Path folder;

    private Outcome<Scenario, Problem> read(String text) throws IOException {
        Path file = folder.resolve("scenario.yaml");
        Files.writeString(file, text);
        return ScenarioReader.read(file);
    }

    private List<String> problems(String text) throws IOException {
        return read(text).reasons().stream()
                .map(Problem::sentence)
                .map(sentence -> sentence.replace(folder.resolve("scenario.yaml") + ":", ""))
                .toList();
    }

    private Scenario good(String text) throws IOException {
        return read(text).orElseThrow();
    }

    @Test
    void aPieceWithoutARateJoinsTheOneBeforeIt() throws IOException {
        TrueLaw law = good(GOOD).propellants().get(0).law();
        assertThat(law.applyAsDouble(2e6 * (1 + 1e-12)))
                .isCloseTo(law.applyAsDouble(2e6 * (1 - 1e-12)), org.assertj.core.api.Assertions.within(1e-12));
        assertThat(law.applyAsDouble(4e6) / law.applyAsDouble(2e6))
                .isCloseTo(Math.pow(2, 0.1), org.assertj.core.api.Assertions.within(1e-12));
    }

    @Test
    void theScenarioOfTheDocumentationIsOne() throws IOException {
        String docs = Files.readString(Path.of("../docs/formats.md"));
        int from = docs.indexOf("```yaml", docs.indexOf("## A scenario")) + "```yaml".length();
        Scenario scenario = good(docs.substring(from, docs.indexOf("```", from)));
        assertThat(scenario.firings()).hasSize(4);
        assertThat(scenario.strands()).hasSize(1);
        // Every fault that can be asked for is named there.
        assertThat(FaultKey.keys()).allSatisfy(key -> assertThat(docs).contains(key));
    }

    private static final String TABLE = GOOD.replace(
            "grain: {kind: bates, outer_diameter: 40 mm, core_diameter: 15 mm, segment_length: 60 mm}",
            "grain: {kind: table, surface_table: grains/port.csv}");

    @Test
    void aGrainOfATableIsFiredAndItsTableGoesIntoTheCampaign() throws IOException {
        Files.createDirectories(folder.resolve("grains"));
        Files.writeString(folder.resolve("grains/port.csv"), "web [mm],area [mm2]\n0,6000\n5,9000\n10,7000\n");
        Path made = folder.resolve("made");
        MadeCampaign.of(good(TABLE)).writeTo(made);
        Campaign campaign = CampaignReader.read(made).orElseThrow();
        GrainDescription grain = campaign.firings().get(0).grain();
        assertThat(grain.kind()).isEqualTo("table");
        assertThat(grain.surface()).hasSize(3);
        assertThat(grain.surface().get(1).surface()).isEqualTo(9000e-6);
        assertThat(grain.surface().get(2).web()).isEqualTo(10e-3);
        // trapezoidal rule over the web: 5 · 7500 + 5 · 8000 = 77.5 cm3 of 1.8 g/cm3
        assertThat(campaign.firings().get(0).propellantMass().orElseThrow().value())
                .isCloseTo(0.1395, org.assertj.core.api.Assertions.within(1e-4));
    }

    @Test
    void theLogSaysOfAGrainWhatIsWrongAndLeavesOutWhatNobodyWrote() throws IOException {
        String text = GOOD.replace(
                        "throat: 8 mm}",
                        "throat: 8.234 mm, exit: 19 mm, logged: {core_diameter: 7.5 mm, segments: 2, inhibited_ends: 1}}")
                .replace("firings:", "instruments: {caliper_step: 0.5 mm, not_logged: exit_diameter}\nfirings:");
        Path made = folder.resolve("made");
        MadeCampaign.of(good(text)).writeTo(made);
        assertThat(Files.readAllLines(made.resolve("firings.csv")))
                .containsExactly(
                        "firing,formulation,trace,grain,segments,inhibited_ends,core_diameter [mm],outer_diameter [mm],"
                                + "segment_length [mm],throat_diameter [mm],propellant_mass [g]",
                        // pi/4 (4.0^2 - 1.5^2) cm2 x 6.0 cm x 1.8 g/cm3 = 116.6 g: the grain that was cast
                        "F1,one,traces/F1.csv,bates,2,1,7.5,40.0,60.0,8.0,116.6");
        assertThat(problems(text.replace("not_logged: exit_diameter", "not_logged: exit")))
                .singleElement()
                .satisfies(problem -> assertThat(problem).contains("exit_diameter"));
    }

    @Test
    void aTableThatIsMissingOrWrongIsToldWithItsLine() throws IOException {
        assertThat(problems(TABLE)).anyMatch(text -> text.contains("surface_table"));
        Files.createDirectories(folder.resolve("grains"));
        Files.writeString(folder.resolve("grains/port.csv"), "web [mm],area [mm2]\n0,6000\n5,-9\n");
        assertThat(problems(TABLE)).anyMatch(text -> text.contains("grains/port.csv:3") && text.contains("-9"));
    }

    @Test
    void everythingThatIsWrongIsToldAtOnce() throws IOException {
        String wrong = GOOD.replace("1.8 g/cm3", "1.8")
                .replace("exponent: 0.5", "exponent: half")
                .replace("core_diameter: 15 mm", "core_diameter: 45 mm")
                .replace("throat: 8 mm", "throt: 8 mm");
        assertThat(problems(wrong))
                .hasSize(5)
                .anyMatch(text -> text.startsWith("6: formulations.one.density: the number has no unit"))
                .anyMatch(text -> text.contains("exponent") && text.contains("half"))
                .anyMatch(text ->
                        text.contains("firings.F1.throt: the key is not known") && text.contains("write   throat"))
                .anyMatch(text -> text.contains("firings.F1.throat: the key is missing"))
                .anyMatch(text -> text.contains("core_diameter 45.00 mm is not below outer_diameter 40.00 mm"));
    }

    @Test
    void aFiringOfAnUnknownFormulationIsToldWithTheNearestName() throws IOException {
        assertThat(problems(GOOD.replace("formulation: one", "formulation: onne")))
                .singleElement()
                .asString()
                .contains("no such formulation is described", "onne", "write   one");
    }

    @Test
    void emptyAndForeignFilesAreRefusedInOneSentence() throws IOException {
        assertThat(problems("")).isNotEmpty();
        assertThat(problems("- a\n- b\n")).isNotEmpty();
        assertThat(problems("\u0000\u0001\u0002")).isNotEmpty();
        assertThat(ScenarioReader.read(folder.resolve("nowhere.yaml"))
                        .reasons()
                        .get(0)
                        .text())
                .contains("there is no such file");
        assertThat(ScenarioReader.read(folder).reasons().get(0).text()).contains("this is a folder");
    }

    @Test
    void nothingToFireIsToldAsSuch() throws IOException {
        assertThat(problems(GOOD.substring(0, GOOD.indexOf("firings:"))))
                .singleElement()
                .asString()
                .contains("the scenario has no firings, points or strands");
    }

    @Test
    void theSameScenarioGivesTheSameBytesAndAnotherSeedOthers() throws IOException {
        String noisy = GOOD + "logger: {noise: 10 kPa}\ninstruments: {caliper: 0.02 mm}\n";
        byte[] first = MadeCampaign.of(good(noisy)).files().get("traces/F1.csv");
        byte[] again = MadeCampaign.of(good(noisy)).files().get("traces/F1.csv");
        byte[] other = MadeCampaign.of(good(noisy.replace("seed: 1", "seed: 2")))
                .files()
                .get("traces/F1.csv");
        assertThat(again).isEqualTo(first);
        assertThat(other).isNotEqualTo(first);
    }

    @Test
    void oneMoreFiringDoesNotChangeTheOthers() throws IOException {
        String noisy = GOOD + "  F2: {formulation: one, throat: 9 mm}\nlogger: {noise: 10 kPa}\n";
        String alone = GOOD + "logger: {noise: 10 kPa}\n";
        assertThat(MadeCampaign.of(good(noisy)).files().get("traces/F1.csv"))
                .isEqualTo(MadeCampaign.of(good(alone)).files().get("traces/F1.csv"));
    }
}
