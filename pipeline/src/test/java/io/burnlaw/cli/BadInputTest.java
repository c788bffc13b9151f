package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The smallest example of each fault says what stands beside it in expected.txt, and the good firing is unharmed. */
class BadInputTest {

    private static final Path EXAMPLES = Path.of("src", "test", "resources", "bad-input");

    static Stream<Path> examples() throws IOException {
        return Files.list(EXAMPLES).filter(Files::isDirectory).sorted();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void eachFaultIsTold(Path example) throws Exception {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute("check", example.toString());
        String said = "exit code " + code + "\n"
                + out.toString().replace(System.lineSeparator(), "\n").replace(example.toString(), "CAMPAIGN");
        assertThat(err.toString()).isEmpty();
        Path expected = example.resolve("expected.txt");
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.writeString(expected, said);
        }
        assertThat(said).isEqualTo(Files.readString(expected));
        assertThat(code).isIn(1, 2);
    }
}
