package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What other tools find in the report of each sample campaign. */
class SampleReportsTest {

    private static final Path SCHEMAS = Path.of("..", "docs", "schema");

    @TempDir
    private Path folder;

    static Stream<Path> samples() throws IOException {
        return Files.list(Path.of("..", "sample-runs"))
                .filter(Files::isDirectory)
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void documentsAreOfTheirSchemas(Path sample) throws IOException {
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        int code = Burnlaw.commandLine(nowhere, nowhere)
                .execute(
                        "run", sample.toString(), "-o", folder.resolve("report").toString(), "--data-only");
        assertThat(code).isBetween(0, 1);
        assertOfItsSchema("burnlaw.json", "burnlaw-characterization-1.schema.json");
        assertOfItsSchema("coefficients.json", "burnlaw-coefficients-1.schema.json");
    }

    private void assertOfItsSchema(String file, String schema) throws IOException {
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(SCHEMAS.resolve(schema)), InputFormat.JSON)
                        .validate(Files.readString(folder.resolve("report").resolve(file)), InputFormat.JSON))
                .isEmpty();
    }
}
