package io.burnlaw.characterize;

import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.ScenarioReader;
import io.burnlaw.simulation.ScenarioReading;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ProbeTmpTest {
    @Test
    void make() throws Exception {
        for (String c : System.getProperty("burnlaw.only", "24").split(",")) {
            Path made = Files.createDirectories(Path.of("/tmp/stands/slow/c" + c));
            Path file = made.resolve("scenario.yaml");
            Files.writeString(file, SlowRegimeStudy.scenario(Integer.parseInt(c)));
            MadeCampaign.of(((ScenarioReading.Read) ScenarioReader.read(file)).scenario())
                    .writeTo(made.resolve("campaign"));
        }
    }
}
