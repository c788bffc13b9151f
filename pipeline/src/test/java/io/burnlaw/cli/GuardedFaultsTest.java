package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fault of the program, made on purpose at one place, costs what was worked out there and nothing else. */
class GuardedFaultsTest {

    @TempDir
    private Path folder;

    private Path campaign;

    @BeforeEach
    void write() throws IOException {
        campaign = folder.resolve("campaign");
        new MutatedCampaigns().unchanged().write(campaign);
    }

    @AfterEach
    void noMoreFaults() {
        System.clearProperty("burnlaw.fault");
    }

    private Answer with(String fault, String... words) {
        System.setProperty("burnlaw.fault", fault);
        Answer answer = Answer.to(words);
        System.clearProperty("burnlaw.fault");
        assertThat(answer.err()).doesNotContain("fault of the program");
        return answer;
    }

    private Answer json(String fault) {
        return with(fault, "run", campaign.toString(), "--json");
    }

    private static List<JsonNode> others(Answer answer, String id) throws IOException {
        List<JsonNode> others = new ArrayList<>();
        for (JsonNode firing : answer.document().at("/firings")) {
            if (!firing.at("/id").asText().equals(id)) {
                others.add(firing.at("/events"));
                others.add(firing.at("/burn_time"));
                others.add(firing.at("/rate/thickness_time"));
                others.add(firing.at("/status"));
            }
        }
        return others;
    }

    @Test
    void aFiringOrStrandIsRejectedWithTheAskForAReportAndTheOthersAreAsTheyWere() throws IOException {
        Answer sound = json("nothing");
        assertThat(sound.code()).isZero();
        for (String each :
                List.of("firing NS-04", "strand SV-03", "the data of firing NS-04", "the data of strand SV-03")) {
            String id = each.substring(each.lastIndexOf(' ') + 1);
            Answer answer = json(each);
            assertThat(answer.code()).as(each).isEqualTo(1);
            assertThat(answer.firing(id).at("/status").asText()).isEqualTo("rejected");
            assertThat(answer.firing(id).at("/findings").toString())
                    .contains("program-fault", "The program failed on " + each, "please report it")
                    .doesNotContain("Exception", "asked for by a test");
            assertThat(others(answer, id)).as(each).isEqualTo(others(sound, id));
        }
    }

    @Test
    void aLawAComparisonOrAPlanIsMissingAndSaysWhy() throws IOException {
        for (String each : List.of(
                "the law of plateau",
                "the comparisons with date",
                "the plan of date",
                "the prediction check of date")) {
            Answer answer = json(each);
            assertThat(answer.code()).as(each).isIn(0, 1);
            assertThat(answer.out()).contains("The program failed on " + each);
            assertThat(others(answer, "")).hasSize(4 * 9);
            assertThat(answer.document().at("/formulations/0/single_law").isObject())
                    .as(each)
                    .isTrue();
        }
        assertThat(json("the law of plateau").code()).isEqualTo(1);
        for (String each : List.of(
                "the review of the firings", "the search for slow firings", "the trends over additives to date")) {
            assertThat(json(each).code()).as(each).isZero();
        }
    }

    @Test
    void theReportIsWrittenAndTheTerminalNamesTheFiring() {
        Path report = folder.resolve("report");
        Answer answer = with("firing NS-04", "run", campaign.toString(), "-o", report.toString());
        assertThat(answer.code()).isEqualTo(1);
        assertThat(answer.out()).contains("NS-04").contains("The program failed on firing NS-04");
        assertThat(report.resolve("index.html")).exists();
    }

    @Test
    void theCheckStumblesWhereTheRunWould() {
        for (String each : List.of("firing NS-04", "strand SV-03")) {
            Answer answer = with(each, "check", campaign.toString());
            assertThat(answer.code()).isEqualTo(1);
            assertThat(answer.out())
                    .contains("The program failed on " + each)
                    .contains("1 row cannot be used as it is")
                    .doesNotContain("Everything could be read");
        }
    }

    @Test
    void theCheckRejectsATimedRowThatTheRunRejects() throws IOException {
        Path log = campaign.resolve("firings.csv");
        // 12 mm in 2,100 s: no propellant burns so slowly
        Files.writeString(log, Files.readString(log).replace("200,2.1\n", "200,2100\n"));
        Answer run = json("nothing");
        Answer check = Answer.to("check", campaign.toString());
        assertThat(run.firing("T-01").at("/status").asText()).isEqualTo("rejected");
        String message = run.firing("T-01").at("/findings/0/message").asText();
        assertThat(check.out()).contains(message);
        assertThat(check.code()).isEqualTo(1);
    }

    @Test
    void theSameRecordUnderTwoNamesIsSaidByRunAndCheck() throws IOException {
        Files.copy(campaign.resolve("traces/NS-04.csv"), campaign.resolve("traces/copy.csv"));
        Files.copy(campaign.resolve("traces/SV-03.csv"), campaign.resolve("traces/again.csv"));
        rename("firings.csv", "traces/NS-06.csv", "traces/copy.csv");
        rename("strands.csv", "traces/SV-04.csv", "traces/again.csv");
        Answer run = json("nothing");
        for (Answer answer : List.of(run, Answer.to("check", campaign.toString()))) {
            assertThat(answer.out())
                    .contains(
                            "traces/copy.csv has the same content as traces/NS-04.csv, the record of NS-04.",
                            "traces/again.csv has the same content as traces/SV-03.csv, the record of SV-03.");
        }
        for (String id : List.of("NS-06", "SV-04")) {
            assertThat(run.firing(id).at("/status").asText()).isEqualTo("flagged");
        }
    }

    private void rename(String table, String from, String to) throws IOException {
        Path file = campaign.resolve(table);
        Files.writeString(file, Files.readString(file).replace(from, to));
    }
}
