package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a run says to somebody who reads nothing but the terminal. */
class RunOnTerminalTest {

    private static final Path SAMPLE_RUNS = Path.of("..", "sample-runs");

    @TempDir
    private Path folder;

    private String run(String sample) {
        StringWriter out = new StringWriter();
        Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(new StringWriter(), true))
                .execute(
                        "run",
                        SAMPLE_RUNS.resolve(sample).toString(),
                        "-o",
                        folder.resolve(sample).toString(),
                        "--data-only");
        return out.toString();
    }

    @Test
    void aThroatStandsBesideItsPredictionAndItsCaution() {
        assertThat(run("new-sugar-source"))
                .containsPattern(
                        "prediction check: each of 10 firings from the others, off by [0-9.]+ % in peak pressure")
                .containsPattern("next throat: [0-9.]+ mm.*, for a mean of [0-9.]+ MPa, the peak at most [0-9.]+ MPa")
                .contains("proof test", "local law and a licensed person");
    }

    @Test
    void whatAFiringIsCautionedOfStandsBesideItsPoint() {
        assertThat(run("difficult-stand"))
                .containsPattern("DS-05 .*baseline-drift")
                .containsPattern("DS-10 .*lower grade; thrust-derived")
                .containsPattern("(?m)^ +DS-06 [^a-z]*$");
    }

    @Test
    void whereNoMotorWasFiredNoThroatIsSpokenOf() {
        assertThat(run("strand-set")).doesNotContain("next throat", "proof test", "prediction check");
    }
}
