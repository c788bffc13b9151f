package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.burnlaw.report.document.DocumentReading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFoldersTest {

    @TempDir
    private Path folder;

    @Test
    void oneCampaignTakesTheNamedFolderItself() throws Exception {
        assertThat(OutputFolders.of(List.of(folder.resolve("a")), Optional.of(folder.resolve("out"))))
                .containsExactly(java.util.Map.entry(folder.resolve("a"), folder.resolve("out")));
    }

    @Test
    void severalCampaignsTakeAFolderEachBelowIt() throws Exception {
        assertThat(OutputFolders.of(
                                List.of(folder.resolve("a"), folder.resolve("b")), Optional.of(folder.resolve("out")))
                        .values())
                .containsExactly(folder.resolve("out/a"), folder.resolve("out/b"));
    }

    @Test
    void twoCampaignsOfOneNameAreRefused() {
        assertThatThrownBy(() -> OutputFolders.of(
                        List.of(folder.resolve("x/spring"), folder.resolve("y/spring")),
                        Optional.of(folder.resolve("out"))))
                .isInstanceOf(OutputFolders.Refused.class)
                .hasMessageContaining("spring");
    }

    @Test
    void aFolderOfSomethingElseIsRefusedAndAReportIsNot() throws Exception {
        Path out = Files.createDirectory(folder.resolve("out"));
        assertThat(OutputFolders.of(List.of(folder.resolve("a")), Optional.of(out)))
                .hasSize(1);
        Files.writeString(out.resolve("thesis.txt"), "years of work");
        assertThatThrownBy(() -> OutputFolders.of(List.of(folder.resolve("a")), Optional.of(out)))
                .hasMessageContaining(out.toString());
        Files.writeString(out.resolve("burnlaw.json"), "{\"format\": \"other/1\"}");
        assertThatThrownBy(() -> OutputFolders.of(List.of(folder.resolve("a")), Optional.of(out)))
                .hasMessageContaining("no report");
        Files.writeString(out.resolve("burnlaw.json"), "{\"format\": \"burnlaw-characterization/1\"}");
        assertThat(OutputFolders.of(List.of(folder.resolve("a")), Optional.of(out)))
                .hasSize(1);
    }

    @Test
    void aReportInItsCampaignIsSeen() {
        assertThat(OutputFolders.inside(Path.of("club/autumn"), Path.of("club/autumn/report")))
                .isTrue();
        assertThat(OutputFolders.inside(Path.of("."), Path.of("autumn-report"))).isTrue();
        assertThat(OutputFolders.inside(Path.of("club/autumn"), Path.of("club/autumn-report")))
                .isFalse();
    }

    @Test
    void aReportNeverReplacesItsOwnCampaignOrWhatHoldsIt() throws Exception {
        Path campaign = Files.createDirectories(folder.resolve("all/spring"));
        Files.writeString(campaign.resolve("burnlaw.json"), "{}");
        for (Path out : List.of(campaign, campaign.getParent(), campaign.resolve("../spring"))) {
            assertThatThrownBy(() -> OutputFolders.of(List.of(campaign), Optional.of(out)))
                    .hasMessageContaining("replace the campaign")
                    .hasMessageContaining(out.equals(campaign.getParent()) ? "contains" : "is its own folder");
        }
        assertThat(OutputFolders.of(List.of(campaign), Optional.of(campaign.resolve("report"))))
                .hasSize(1);
    }

    @Test
    void theFolderOfAReportStandsForItsDocument() throws Exception {
        Path report = Files.createDirectory(folder.resolve("report"));
        Files.writeString(report.resolve("burnlaw.json"), "{\"format\": \"other/1\"}");
        assertThat(OutputFolders.document(report))
                .isInstanceOfSatisfying(
                        DocumentReading.Refused.class,
                        refused -> assertThat(refused.text()).contains("burnlaw.json"));
        assertThat(OutputFolders.isReport(report)).isTrue();
        Files.writeString(report.resolve("campaign.yaml"), "");
        assertThat(OutputFolders.isReport(report)).as("a campaign is run").isFalse();
    }
}
