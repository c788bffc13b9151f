package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NewCommandTest {

    private static final Path SAMPLE = Path.of("../sample-runs/difficult-stand/traces/DS-01.csv");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int execute(String... words) {
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(words);
    }

    private Path records() throws IOException {
        Path records = Files.createDirectory(folder.resolve("records"));
        Files.copy(SAMPLE, records.resolve("shot 1.csv"));
        Files.writeString(records.resolve("shot 2.txt"), "0.1\n0.2\n".repeat(20));
        Files.writeString(records.resolve("readme.txt"), "nothing");
        return records;
    }

    @Test
    void eachRecordFoundHasARowWithWhatCouldBeReadOfIt() throws IOException {
        Path campaign = folder.resolve("campaign");
        assertThat(execute("new", campaign.toString(), "--from", records().toString()))
                .isZero();
        List<String> log = Files.readAllLines(campaign.resolve("firings.csv"));
        assertThat(log).hasSize(3);
        assertThat(log.get(1)).startsWith("shot 1,base,traces/shot 1.csv,").contains("1631 samples in 3.26 s");
        assertThat(log.get(2)).contains("not read yet: each row has one reading and no time");
        assertThat(campaign.resolve("traces/shot 1.csv")).hasSameBinaryContentAs(SAMPLE);
        assertThat(campaign.resolve("traces/readme.txt")).doesNotExist();
        assertThat(Files.readString(campaign.resolve("campaign.yaml")))
                .contains("# shot 2.txt shows   column 1: 0.1, 0.2, 0.1")
                .contains("  # sampling: 2 kHz  # the rate of your logger");
        assertThat(execute("check", campaign.toString())).isEqualTo(2);
        assertThat(out.toString()).contains("grain: the cell is empty").doesNotContain("campaign.yaml:");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--thrust", "--video"})
    void everySkeletonCanBeChecked(String option) {
        List<String> words = new ArrayList<>(List.of("new", folder.resolve("c").toString()));
        Stream.of(option).filter(each -> !each.isEmpty()).forEach(words::add);
        assertThat(execute(words.toArray(String[]::new))).isZero();
        assertThat(execute("check", folder.resolve("c").toString())).isEqualTo(1);
        assertThat(out.toString()).contains("Everything could be read, but there is nothing to use yet.");
    }

    @Test
    void aFolderWithoutRecordsIsToldAndNothingIsWritten() throws IOException {
        Path campaign = folder.resolve("campaign");
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertThat(execute("new", campaign.toString(), "--from", empty.toString()))
                .isEqualTo(2);
        assertThat(err.toString()).contains("the folder has no records");
        assertThat(execute(
                        "new",
                        campaign.toString(),
                        "--from",
                        folder.resolve("gone").toString()))
                .isEqualTo(2);
        assertThat(err.toString()).contains("there is no such folder");
        assertThat(execute("new", campaign.toString(), "--thrust", "--video")).isEqualTo(2);
        assertThat(campaign).doesNotExist();
    }
}
