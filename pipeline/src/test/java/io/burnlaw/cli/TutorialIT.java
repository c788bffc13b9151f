package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** docs/tutorial.md is followed to the letter: its commands are run, and print what it shows. */
class TutorialIT {

    private static final Pattern BLOCK = Pattern.compile("```(console|text|yaml)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern PICTURE = Pattern.compile("!\\[[^]]+]\\(([^)]+)\\)");

    @TempDir
    private Path folder;

    @Test
    void everyCommandDoesWhatIsShown() throws Exception {
        Files.createDirectories(folder.resolve("pipeline/target"));
        Files.copy(RunnableJar.JAR, folder.resolve("pipeline/target/burnlaw.jar"));
        Path samples = Files.createSymbolicLink(folder.resolve("sample-runs"), RunnableJar.SAMPLE_RUNS);
        String printed = "";
        int shown = 0;
        for (Matcher block = BLOCK.matcher(tutorial()); block.find(); ) {
            switch (block.group(1)) {
                case "yaml" -> Files.writeString(folder.resolve("date-sugar/campaign.yaml"), block.group(2));
                case "console" -> printed = console(block.group(2));
                default -> {
                    assertThat(printed.lines())
                            .containsAll(block.group(2).lines().toList());
                    shown++;
                }
            }
        }
        Files.delete(samples);
        assertThat(shown).isGreaterThanOrEqualTo(3);
        assertThat(folder.resolve("date-sugar-report/index.html")).isNotEmptyFile();
    }

    @Test
    void everyPictureIsThere() throws Exception {
        for (Matcher picture = PICTURE.matcher(tutorial()); picture.find(); ) {
            assertThat(RunnableJar.DOCS.resolve(picture.group(1))).isNotEmptyFile();
        }
    }

    /** Runs the lines one by one. A campaign that wants mending is part of the story, a fault of the program is not. */
    private String console(String lines) throws Exception {
        StringBuilder printed = new StringBuilder();
        for (String line : lines.lines().toList()) {
            RunnableJar.Outcome outcome = RunnableJar.execute(folder, new ArrayList<>(List.of("bash", "-c", line)));
            assertThat(outcome.exitCode()).as("%s%n%s", line, outcome.err()).isLessThanOrEqualTo(2);
            printed.append(outcome.out()).append(outcome.err());
        }
        return printed.toString();
    }

    private static String tutorial() throws Exception {
        return Files.readString(RunnableJar.DOCS.resolve("tutorial.md"));
    }
}
