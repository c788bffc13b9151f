package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The pages of the invented report as they were when somebody last looked at them. Whoever changes what they show runs
 * this with {@code -Dburnlaw.update=true} and reads the difference.
 */
class GoldenPagesTest {

    private static final Path GOLDEN = Path.of("src/test/resources/golden");

    @ParameterizedTest
    @ValueSource(strings = {"index.html", "firings/OR-03.html", "firings/OS-1.html", "charts/law-orchard.svg"})
    void thePageIsAsItWas(String path) throws IOException {
        String page = readable(ReportWriter.files(SampleDocument.rich(), ReportWriter.Options.EVERYTHING)
                .get(path));
        Path golden = GOLDEN.resolve(path);
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.createDirectories(golden.getParent());
            Files.writeString(golden, page);
        }
        assertThat(page).isEqualTo(Files.readString(golden));
    }

    /**
     * Without what has tests of its own, so that a difference can be read: style sheet, scripts, embedded data, policy,
     * and the paths of the pictures, of which one is kept whole.
     */
    private static String readable(String page) {
        return page.startsWith("<?xml")
                ? page.replaceAll("(?s)<style>.*?</style>", "<style/>")
                        .replaceAll("(?=<(g|text|path|line|rect|circle)\\b)", "\n")
                : page.replaceAll("(?s)<style>.*?</style>", "<style></style>")
                        .replaceAll("(?s)(<script[^>]*>).*?</script>", "$1</script>")
                        .replaceAll("(http-equiv=\"Content-Security-Policy\" content=\")[^\"]*", "$1")
                        .replaceAll("(SHA-256(?: of burnlaw.json: | <span class=\"sum\">))[0-9a-f]{64}", "$1")
                        .replaceAll("(?s)(<svg class=\"chart [^>]*>).*?(?=\n<figcaption)", "$1</svg>")
                        .replaceAll("(?s)(<svg class=\"spark\"[^>]*>).*?</svg>", "$1</svg>");
    }
}
