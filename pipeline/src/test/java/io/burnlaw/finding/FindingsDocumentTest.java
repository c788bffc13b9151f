package io.burnlaw.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** docs/findings.md is what the list of codes says; {@code -Dburnlaw.update=true} writes it anew. */
class FindingsDocumentTest {

    private static final Path DOCUMENT = Path.of("..", "docs", "findings.md");

    @Test
    void theDocumentSaysWhatTheCodeSays() throws Exception {
        StringBuilder text =
                new StringBuilder("# Findings\n\nWhat can be seen in a trace, a burn or a law. Made from the"
                        + " list in the code; do not edit.\n");
        for (FindingCode.Family family : FindingCode.Family.values()) {
            text.append("\n## ").append(title(family)).append("\n\n| code | severity | meaning | what to do |\n");
            text.append("| --- | --- | --- | --- |\n");
            for (FindingCode code : FindingCode.values()) {
                if (code.family() == family) {
                    text.append("| `%s` | %s | **%s.** %s | %s |%n"
                            .formatted(
                                    code.code(),
                                    code.usualSeverity().name().toLowerCase(Locale.ROOT),
                                    code.title(),
                                    code.meaning(),
                                    code.advice())
                            .replace(System.lineSeparator(), "\n"));
                }
            }
        }
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.writeString(DOCUMENT, text);
        }
        assertThat(Files.readString(DOCUMENT)).isEqualTo(text.toString());
    }

    private static String title(FindingCode.Family family) {
        return switch (family) {
            case TRACE -> "The record";
            case BURNING -> "The burn";
            case PLAUSIBILITY -> "Plausibility";
            case LAW -> "The law";
        };
    }
}
