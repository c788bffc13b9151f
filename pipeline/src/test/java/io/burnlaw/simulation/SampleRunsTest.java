package io.burnlaw.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The sample runs are what their scenarios make, byte by byte. */
class SampleRunsTest {

    private static final Path FOLDER = Path.of("..", "sample-runs");

    static Stream<String> runs() throws IOException {
        try (Stream<Path> folders = Files.list(FOLDER)) {
            return folders
                    .filter(folder -> Files.exists(folder.resolve("scenario.yaml")))
                    .map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("runs")
    void theScenarioMakesTheCommittedFiles(String run) throws IOException {
        Path folder = FOLDER.resolve(run);
        MadeCampaign made = MadeCampaign.of(scenario(folder.resolve("scenario.yaml")));
        Map<String, byte[]> committed = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String path = folder.relativize(file).toString().replace('\\', '/');
                if (!List.of("scenario.yaml", "README.md").contains(path)) {
                    committed.put(path, Files.readAllBytes(file));
                }
            }
        }
        assertThat(committed.keySet()).containsExactlyElementsOf(new TreeMap<>(made.files()).keySet());
        committed.forEach((path, bytes) -> assertThat(new String(bytes, StandardCharsets.UTF_8))
                .as("run again: burnlaw simulate sample-runs/%s/scenario.yaml -o sample-runs/%s; %s", run, run, path)
                .isEqualTo(new String(made.files().get(path), StandardCharsets.UTF_8)));
    }

    @ParameterizedTest
    @MethodSource("runs")
    void theCommittedFilesAreACampaignWithoutAFaultyRow(String run) {
        Campaign campaign = CampaignReader.read(FOLDER.resolve(run)).orElseThrow();
        assertThat(campaign.unusableRows()).isEmpty();
        assertThat(campaign.title()).contains("(invented)");
        assertThat(campaign.note().orElseThrow()).contains("Invented data");
    }

    @ParameterizedTest
    @MethodSource("runs")
    void aReadmeSaysThatItIsInvented(String run) throws IOException {
        assertThat(Files.readString(FOLDER.resolve(run).resolve("README.md"))).containsIgnoringCase("invented");
    }

    private static Scenario scenario(Path path) {
        return ScenarioReader.read(path).orElseThrow();
    }
}
