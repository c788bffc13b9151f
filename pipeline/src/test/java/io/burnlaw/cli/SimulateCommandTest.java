package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class SimulateCommandTest {

    private static final Path SCENARIO = Path.of("..", "sample-runs", "strand-set", "scenario.yaml");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(Object scenario, Path output) {
        return new CommandLine(new SimulateCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(scenario.toString(), "-o", output.toString());
    }

    @Test
    void aScenarioBecomesAFolder() throws IOException {
        Path output = folder.resolve("made").resolve("here");
        assertThat(run(SCENARIO, output)).isZero();
        assertThat(output.resolve("campaign.yaml")).exists();
        assertThat(output.resolve("truth.yaml")).exists();
        assertThat(out.toString()).contains("8 strands").contains("invented");
        assertThat(err.toString()).isEmpty();
        assertThat(names(output.getParent())).containsExactly("here");
    }

    @Test
    void anEarlierCampaignIsReplacedAndFilesOfItsOwnerStay() throws IOException {
        Path output = folder.resolve("made");
        run(SCENARIO, output);
        Files.writeString(output.resolve("README.md"), "kept");
        Files.writeString(output.resolve("traces").resolve("real.csv"), "measured");
        assertThat(run(SCENARIO, output)).as(err.toString()).isZero();
        assertThat(output.resolve("README.md")).hasContent("kept");
        assertThat(output.resolve("traces").resolve("real.csv")).hasContent("measured");
    }

    @Test
    void recordsThatSomebodyMeasuredAreNotDeletedForAScenarioThatLiesBesideThem() throws IOException {
        Path output = Files.createDirectories(folder.resolve("real/traces")).getParent();
        Files.copy(SCENARIO, output.resolve("scenario.yaml"));
        Files.writeString(output.resolve("campaign.yaml"), "mine");
        Files.writeString(output.resolve("firings.csv"), "mine too");
        Files.writeString(output.resolve("traces/real.csv"), "measured");
        assertThat(run(output.resolve("scenario.yaml"), output)).isEqualTo(3);
        assertThat(err.toString()).contains("nothing was written").contains("campaign.yaml");
        assertThat(output.resolve("campaign.yaml")).hasContent("mine");
        assertThat(output.resolve("firings.csv")).hasContent("mine too");
        assertThat(output.resolve("traces/real.csv")).hasContent("measured");
        assertThat(names(folder)).containsExactly("real");
    }

    @Test
    void aFileOfAnEarlierCampaignThatWasEditedIsNotOverwritten() throws IOException {
        Path output = folder.resolve("made");
        run(SCENARIO, output);
        Files.writeString(output.resolve("strands.csv"), "edited");
        assertThat(run(SCENARIO, output)).isEqualTo(3);
        assertThat(err.toString()).contains("strands.csv is not what an earlier simulate wrote");
        assertThat(output.resolve("strands.csv")).hasContent("edited");
    }

    @Test
    void aFolderWithSomethingElseIsLeftAlone() throws IOException {
        Files.writeString(folder.resolve("thesis.txt"), "mine");
        assertThat(run(SCENARIO, folder)).isEqualTo(3);
        assertThat(err.toString()).contains("nothing was written");
        assertThat(names(folder)).containsExactly("thesis.txt");
    }

    @Test
    void aBadScenarioWritesNothingAndSaysWhy() throws IOException {
        Path bad = folder.resolve("bad.yaml");
        Files.writeString(bad, "format: burnlaw-scenario/1\ntitel: x\n");
        assertThat(run(bad, folder.resolve("made"))).isEqualTo(2);
        assertThat(err.toString())
                .contains("bad.yaml:2: titel: the key is not known")
                .contains("write   title")
                .contains("nothing was written");
        assertThat(folder.resolve("made")).doesNotExist();
    }

    private static java.util.List<String> names(Path of) throws IOException {
        try (Stream<Path> inside = Files.list(of)) {
            return inside.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
