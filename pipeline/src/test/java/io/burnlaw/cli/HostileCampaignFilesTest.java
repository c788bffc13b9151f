package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables and keys that nobody writes by accident: refused in a few lines that say what and where. */
class HostileCampaignFilesTest {

    private static final String YAML = """
            format: burnlaw-campaign/1
            title: Invented
            ambient_pressure: 101.3 kPa
            formulations:
              base: {title: Invented}
            """;
    private static final String POINTS = """
            point,formulation,pressure [MPa],rate [mm/s],pressure_kind
            A,base,1.0,5.0,absolute
            B,base,2.0,6.0,absolute
            """;

    @TempDir
    private Path campaign;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(campaign.resolve("campaign.yaml"), YAML);
        Files.writeString(campaign.resolve("points.csv"), POINTS);
    }

    private void refused(String words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute("check", campaign.toString());
        assertThat(out.toString()).contains(words).doesNotContain("Exception", "gauge or absolute", "\0");
        assertThat(out.toString().length()).isLessThan(20_000);
        assertThat(err.toString()).isEmpty();
        assertThat(code).isIn(1, 2);
    }

    @Test
    void aliasesThatGrowWithoutEndAreNotFollowed() throws IOException {
        StringBuilder laughs = new StringBuilder(YAML + "a0: &a0 [lol, lol]\n");
        for (int i = 1; i < 40; i++) {
            laughs.append("a%d: &a%d [*a%d, *a%d]%n".formatted(i, i, i - 1, i - 1));
        }
        Files.writeString(campaign.resolve("campaign.yaml"), laughs);
        refused("campaign.yaml:6: anchors and aliases (& and *) are not supported");
    }

    @Test
    void keysNestedWithoutEndAreRefused() throws IOException {
        Files.writeString(campaign.resolve("campaign.yaml"), YAML + "note: " + "[".repeat(100_000) + "\n");
        refused("campaign.yaml:6: the keys are nested too deeply");
        Files.writeString(campaign.resolve("campaign.yaml"), YAML + "note: " + "{a: ".repeat(100_000) + "\n");
        refused("campaign.yaml:6: the keys are nested too deeply");
        Files.writeString(campaign.resolve("campaign.yaml"), YAML + "- ".repeat(100_000) + "\n");
        refused("campaign.yaml:");
    }

    @Test
    void aLineOfAMillionColumnsIsNoTable() throws IOException {
        Files.writeString(campaign.resolve("points.csv"), POINTS.replaceFirst("\n", ",x".repeat(1_000_000) + "\n"));
        refused("points.csv:1: this is not a table");
    }

    @Test
    void nulBytesAndNumbersThatAreNoneAreToldWithTheirPlace() throws IOException {
        Files.writeString(campaign.resolve("points.csv"), POINTS.replace("2.0", "NaN"));
        refused("points.csv:3: pressure [MPa]: the text is not a number");
        Files.writeString(campaign.resolve("points.csv"), POINTS.replace("2.0", "9e999"));
        refused("points.csv:3: pressure [MPa]");
        Files.writeString(campaign.resolve("points.csv"), POINTS.replace("2.0", "Infinity"));
        refused("points.csv:3: pressure [MPa]");
        Files.writeString(campaign.resolve("points.csv"), POINTS.replace("2.0", "2e307"));
        refused("points.csv:3: pressure [MPa]");
        Files.writeString(campaign.resolve("points.csv"), POINTS.replace("B,", "B\0,"));
        refused("points.csv");
        Files.writeString(campaign.resolve("campaign.yaml"), YAML.replace("Invented", "In\0vented"));
        refused("campaign.yaml");
    }

    @Test
    void linksThatTurnInCirclesAndLinksOutOfTheFolderAreRefused() throws IOException {
        Files.delete(campaign.resolve("points.csv"));
        Files.createSymbolicLink(campaign.resolve("points.csv"), Path.of("points.csv"));
        refused("points.csv: the file cannot be reached");
        Files.delete(campaign.resolve("points.csv"));
        Files.createSymbolicLink(campaign.resolve("points.csv"), Path.of("/etc/passwd"));
        refused("points.csv: the path leaves the campaign folder");
        Files.delete(campaign.resolve("points.csv"));
        Files.delete(campaign.resolve("campaign.yaml"));
        Files.createSymbolicLink(campaign.resolve("campaign.yaml"), Path.of("campaign.yaml"));
        refused("campaign.yaml: the file cannot be reached");
        Files.delete(campaign.resolve("campaign.yaml"));
        Files.createDirectory(campaign.resolve("campaign.yaml"));
        refused("campaign.yaml: this is not an ordinary file");
    }
}
