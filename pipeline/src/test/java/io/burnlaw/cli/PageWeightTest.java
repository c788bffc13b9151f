package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A page that is sent to a friend is light: it is counted in bytes, which are the same on every machine. */
class PageWeightTest {

    private static final Path SAMPLE = Path.of("..", "sample-runs", "new-sugar-source");
    private static final int MANY = 300;

    @TempDir
    private Path folder;

    @Test
    void theFirstPageIsLightForTenFiringsAndForHundreds() throws IOException {
        long ten = page(SAMPLE);
        assertThat(ten).isLessThanOrEqualTo(200_000);
        burnlaw("simulate", scenario().toString(), "-o", folder.resolve("many").toString());
        long many = page(folder.resolve("many"));
        assertThat(many).isLessThanOrEqualTo(3_000_000);
        // each further firing adds its row, its points and its part of the document: 900 by the same line
        assertThat(ten + (many - ten) * (900 - 10) / (MANY - 10)).isLessThanOrEqualTo(8_000_000);
    }

    /** The sample with more firings, read less often: the page does not carry the samples. */
    private Path scenario() throws IOException {
        String few = Files.readString(SAMPLE.resolve("scenario.yaml"));
        StringBuilder scenario = new StringBuilder(few.substring(0, few.indexOf("firings:\n")));
        scenario.replace(
                scenario.indexOf("interval: 2 ms"), scenario.indexOf("interval: 2 ms") + 14, "interval: 12 ms");
        scenario.append("firings:\n");
        for (int i = 0; i < MANY; i++) {
            scenario.append(String.format(
                    Locale.ROOT,
                    "  NS-%04d: {formulation: date, throat: %.2f mm}%n",
                    i,
                    5.6 + 3.9 * ((i * 37) % MANY) / MANY));
        }
        return Files.writeString(folder.resolve("scenario.yaml"), scenario.toString());
    }

    private long page(Path campaign) throws IOException {
        Path report = folder.resolve("report-" + campaign.getFileName());
        burnlaw("run", campaign.toString(), "-o", report.toString(), "--reproducible");
        return Files.size(report.resolve("index.html"));
    }

    private static void burnlaw(String... words) {
        StringWriter said = new StringWriter();
        PrintWriter out = new PrintWriter(said, true);
        // 1: done, where a firing was rejected
        assertThat(Burnlaw.commandLine(out, out).execute(words))
                .as(said.toString())
                .isLessThanOrEqualTo(1);
    }
}
