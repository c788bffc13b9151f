package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is for a terminal is on a terminal only; script(1) of util-linux stands in for one. */
class OnTerminalIT {

    private static final String ESCAPE = "\u001b";

    @TempDir
    private static Path folder;

    @BeforeAll
    static void thereIsAStandIn() {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/script")), "script is not installed");
    }

    private static String onTerminal(String environment, String after) throws Exception {
        return onTerminal(environment, "strand-set", after);
    }

    private static String onTerminal(String environment, String sample, String after) throws Exception {
        String command = environment + " java -jar " + RunnableJar.JAR + " run --data-only "
                + RunnableJar.SAMPLE_RUNS.resolve(sample) + " -o report" + after;
        RunnableJar.Outcome outcome =
                RunnableJar.execute(folder, List.of("/usr/bin/script", "-qec", command, "/dev/null"));
        assertThat(outcome.out()).contains("burnlaw.json");
        return outcome.out();
    }

    @Test
    void theAnswerIsBold() throws Exception {
        assertThat(onTerminal("COLUMNS=100", "")).containsPattern(ESCAPE + "\\[1mr\\h=\\h[0-9.]+\\h·");
    }

    @Test
    void whoWantsNoColourGetsNone() throws Exception {
        assertThat(onTerminal("NO_COLOR=1", "")).doesNotContain(ESCAPE);
        assertThat(onTerminal("TERM=dumb", "")).doesNotContain(ESCAPE);
    }

    @Test
    void filesAndPipesGetTheTextAlone() throws Exception {
        assertThat(onTerminal("", "difficult-stand", " 2> messages.txt")).contains(ESCAPE);
        assertThat(folder.resolve("messages.txt")).isEmptyFile();
        onTerminal("", " > results.txt; cat results.txt");
        assertThat(Files.readString(folder.resolve("results.txt"))).doesNotContain(ESCAPE);
        onTerminal("", "difficult-stand", " 2>&1 | cat > both.txt; cat both.txt");
        assertThat(Files.readString(folder.resolve("both.txt"))).doesNotContain(ESCAPE, "firings reduced ");
    }

    @Test
    void noLineIsWiderThanTheTerminal() throws Exception {
        for (int width : new int[] {50, 80}) {
            assertThat(onTerminal("NO_COLOR=1 COLUMNS=" + width, "difficult-stand", "")
                            .lines())
                    .as("in %d columns", width)
                    .allMatch(line -> line.strip().length() <= width || line.contains(RunnableJar.JAR.toString()));
        }
    }
}
