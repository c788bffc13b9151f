package io.burnlaw.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Writes docs/validation.md from the tests that carry an oracle and from the sections that the studies left. It runs last
 * in {@code mvn -Pvalidation verify}, so what it lists has passed.
 */
class ValidationDocument {

    private static final Path CLASSES = Path.of("target", "test-classes");
    private static final Path SECTIONS = Path.of("target", "validation");
    private static final Path DOCUMENT = Path.of("..", "docs", "validation.md");

    @Test
    void isWrittenFromOraclesAndStudies() throws IOException {
        List<OracleTable.Row> rows = OracleTable.scan(CLASSES);
        List<String> sections = sections();
        assertThat(rows).as("tests with an oracle in %s", CLASSES).isNotEmpty();
        assertThat(sections)
                .as("sections of studies in %s; run mvn -Pvalidation verify", SECTIONS)
                .isNotEmpty();
        long soft = rows.stream().filter(OracleTable.Row::fromMemory).count();
        Files.createDirectories(DOCUMENT.getParent());
        Files.writeString(DOCUMENT, """
                # Validation

                This page says what was checked, against what, and how closely it agrees. `mvn -Pvalidation \
                verify` writes it from the tests and the seeded studies of the source tree; it is never edited \
                by hand. The build stops if a check fails, so every line below was true in the build that wrote \
                it. Only the long runs at the end are older; their day is given with them.

                There are two kinds of evidence. **Checks against outside sources** compare results with \
                published data, certified values, closed forms or general statistics libraries; the expected \
                values never come from the code that they check. **Studies** simulate many campaigns with known \
                true values, from seeds in the code, and count how often the stated intervals contain the truth \
                and the stated verdicts are right.

                ## Checks against outside sources

                %d checks, %d of them soft: their source was cited from memory, not read, and they are marked so.

                %s
                %s
                %s
                ## How to repeat it

                ```sh
                mvn -B -ntp -Pvalidation verify
                ```

                Every study draws its random numbers from fixed seeds, so the same source code gives the same \
                page. The studies take minutes; the checks alone are part of every `mvn verify`.
                """.formatted(
                        rows.size(),
                        soft,
                        OracleTable.markdown(rows).strip() + "\n",
                        String.join("", sections).strip() + "\n",
                        LongRuns.markdown()));
    }

    private static List<String> sections() throws IOException {
        if (!Files.isDirectory(SECTIONS)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(SECTIONS)) {
            return files.filter(file -> file.toString().endsWith(".md"))
                    .sorted()
                    .map(ValidationDocument::read)
                    .collect(Collectors.toList());
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file).strip() + "\n\n";
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
