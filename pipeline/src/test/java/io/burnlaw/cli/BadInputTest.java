package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.io.FileUtils;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The smallest example of each fault says what stands beside it in expected.txt, and the good firing is unharmed.
 *
 * <p>An example holds only the files in which it differs from the sound campaign, and names in without.txt those that it
 * lacks.
 */
class BadInputTest {

    private static final Path EXAMPLES = Path.of("src", "test", "resources", "bad-input");
    private static final Path SOUND = EXAMPLES.resolve("the-sound-campaign");

    static Stream<Path> examples() throws IOException {
        return Files.list(EXAMPLES)
                .filter(Files::isDirectory)
                .filter(folder -> !folder.equals(SOUND))
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void eachFaultIsTold(Path example, @TempDir Path folder) throws Exception {
        Path campaign = made(example, folder);
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute("check", campaign.toString());
        String said = "exit code " + code + "\n"
                + out.toString().replace(System.lineSeparator(), "\n").replace(campaign.toString(), "CAMPAIGN");
        assertThat(err.toString()).isEmpty();
        Path expected = example.resolve("expected.txt");
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.writeString(expected, said);
        }
        assertThat(said).isEqualTo(Files.readString(expected));
        assertThat(code).isIn(1, 2);
    }

    private static Path made(Path example, Path folder) throws IOException {
        Path campaign = folder.resolve(example.getFileName());
        FileUtils.copyDirectory(SOUND.toFile(), campaign.toFile());
        FileUtils.copyDirectory(
                example.toFile(),
                campaign.toFile(),
                file -> !List.of("expected.txt", "without.txt").contains(file.getName()));
        Path without = example.resolve("without.txt");
        for (String name : Files.exists(without) ? Files.readAllLines(without) : List.<String>of()) {
            Files.delete(campaign.resolve(name));
        }
        return campaign;
    }
}
