package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers and records that no firing gives cost their own firing, strand or document, in words, and nothing else. */
class HostileNumbersTest {

    @TempDir
    private Path folder;

    private Path campaign;
    private Map<String, String> before;

    @BeforeEach
    void write() throws IOException {
        campaign = folder.resolve("campaign");
        new MutatedCampaigns().unchanged().write(campaign);
        before = figures(run());
    }

    private Answer run() throws IOException {
        Answer answer = Answer.to("run", campaign.toString(), "--json");
        Answer check = Answer.to("check", campaign.toString());
        for (Answer each : List.of(answer, check)) {
            assertThat(each.code()).as(each.err()).isIn(0, 1);
            assertThat(each.err()).isEmpty();
            assertThat(each.out()).doesNotContain("Exception", "java.", "The program failed", "NaN", "Infinity");
        }
        assertThat(check.code()).isGreaterThanOrEqualTo(answer.code());
        return answer;
    }

    /** What comes from the record and the row of each firing and strand. */
    private static Map<String, String> figures(Answer answer) throws IOException {
        Map<String, String> figures = new TreeMap<>();
        for (JsonNode each : answer.document().at("/firings")) {
            figures.put(
                    each.at("/id").asText(),
                    each.at("/events").toString() + each.at("/burn_time") + each.at("/rate/thickness_time"));
        }
        return figures;
    }

    private void edit(String file, UnaryOperator<String> change) throws IOException {
        Path path = campaign.resolve(file);
        String text = Files.readString(path);
        String changed = change.apply(text);
        assertThat(changed).isNotEqualTo(text);
        Files.writeString(path, changed);
    }

    private void rejected(String id, String words) throws IOException {
        Answer answer = run();
        assertThat(answer.code()).isEqualTo(1);
        assertThat(answer.firing(id).at("/status").asText()).isEqualTo("rejected");
        assertThat(answer.firing(id).at("/findings").toString()).contains(words);
        Map<String, String> after = figures(answer);
        before.forEach((other, figures) -> {
            if (!other.equals(id)) {
                assertThat(after).containsEntry(other, figures);
            }
        });
        assertThat(answer.document().at("/formulations/0/single_law").isObject())
                .isTrue();
    }

    private static String lines(String text, int count) {
        return text.lines().limit(count).map(line -> line + "\n").collect(Collectors.joining());
    }

    @ParameterizedTest
    @CsvSource({"240, still rises", "100, still rises", "20, only 19 samples"})
    void aStrandRecordThatEndsEarly(int kept, String words) throws IOException {
        edit("traces/SV-03.csv", text -> lines(text, kept));
        rejected("SV-03", words);
    }

    @Test
    void aStrandWhoseHighestReadingIsItsLast() throws IOException {
        // noise alone, with a last reading that stands out of it: the lines of the rise have no reading after them
        edit("traces/SV-03.csv", text -> {
            String[] lines = text.split("\n");
            for (int i = 1; i < lines.length; i++) {
                String time = lines[i].split(",")[0];
                lines[i] = time + "," + (i == lines.length - 1 ? "1e-9" : (i * 7919 % 1000) * 1e-15);
            }
            return String.join("\n", lines) + "\n";
        });
        rejected("SV-03", "rises");
    }

    @Test
    void aDeadSensorWithBreakWires() throws IOException {
        assertThat(Files.readString(campaign.resolve("strands.csv"))).containsPattern("SV-02,.*; ");
        edit("traces/SV-02.csv", text -> text.replaceAll("(?m)^([0-9.]+),.*$", "$1,0"));
        rejected("SV-02", "no pressure above zero");
    }

    @Test
    void headingsInKilopascalOverValuesInMegapascal() throws IOException {
        for (String id : List.of("NS-02", "NS-04", "NS-06", "NS-08")) {
            edit("traces/" + id + ".csv", text -> text.replace("[MPa]", "[kPa]"));
        }
        Answer answer = run();
        assertThat(answer.code()).isEqualTo(1);
        for (String id : List.of("NS-02", "NS-04", "NS-06", "NS-08")) {
            assertThat(answer.firing(id).at("/status").asText()).isEqualTo("rejected");
        }
        assertThat(figures(answer)).containsEntry("SV-02", before.get("SV-02"));
    }

    @Test
    void aChamberOfCubicMetres() throws IOException {
        edit("firings.csv", text -> text.replace("chamber_volume [cm3]", "chamber_volume [m3]"));
        Answer answer = run();
        for (String id : List.of("NS-02", "NS-04", "NS-06", "NS-08")) {
            assertThat(answer.firing(id).at("/status").asText()).isNotEqualTo("used");
            assertThat(answer.firing(id).at("/findings").toString()).contains("chamber");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e303", "-1e303", "1e200"})
    void aHugeReading(String reading) throws IOException {
        edit("traces/NS-04.csv", text -> {
            String[] lines = text.split("\n");
            lines[100] = lines[100].split(",")[0] + "," + reading;
            return String.join("\n", lines) + "\n";
        });
        rejected("NS-04", "sample 100 has a pressure");
    }

    @ParameterizedTest
    @CsvSource({"8, 9.5 \u00b1 1e155", "8, 9.5 \u00b1 20", "9, 200 \u00b1 1e9", "10, 200 \u00b1 1e9", "10, 1e303"})
    void anUncertaintyOrAValueBeyondAllMeasure(int column, String to) throws IOException {
        edit("firings.csv", text -> {
            String row = text.lines()
                    .filter(line -> line.startsWith("NS-04"))
                    .findFirst()
                    .orElseThrow();
            String[] cells = row.split(",", -1);
            cells[column] = to;
            return text.replace(row, String.join(",", cells));
        });
        Answer answer = run();
        assertThat(answer.firing("NS-04").at("/status").asText()).isEqualTo("rejected");
        Map<String, String> after = figures(answer);
        before.forEach((other, figures) -> {
            if (!other.equals("NS-04")) {
                assertThat(after).containsEntry(other, figures);
            }
        });
    }

    @ParameterizedTest
    @CsvSource({"NS-04,1e-8", "NS-04,1e-12", "SV-03,1e-8", "SV-03,1e-12", "NS-04,1e8", "SV-03,1e12"})
    void timesInAnotherUnit(String id, double factor) throws IOException {
        edit("traces/" + id + ".csv", text -> {
            StringBuilder scaled = new StringBuilder();
            text.lines().forEach(line -> {
                String[] cells = line.split(",");
                scaled.append(
                                line.startsWith("time")
                                        ? cells[0]
                                        : Double.toString(Double.parseDouble(cells[0]) * factor))
                        .append(',')
                        .append(cells[1])
                        .append('\n');
            });
            return scaled.toString();
        });
        rejected(id, "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e303", "1e155", "1e-303", "5e-324", "1.7976931348623157e308", "-1", "0"})
    void wholeColumnsOfExtremeNumbers(String number) throws IOException {
        for (String table : List.of("firings.csv", "strands.csv", "points.csv")) {
            String text = Files.readString(campaign.resolve(table));
            String[] headings = text.lines().findFirst().orElseThrow().split(",");
            for (int column = 3; column < headings.length; column++) {
                int c = column;
                edit(
                        table,
                        sound -> sound.lines()
                                .map(line -> line.split(",", -1))
                                .map(cells -> {
                                    if (!cells[0].equals(headings[0])) {
                                        cells[c] = number;
                                    }
                                    return String.join(",", cells) + "\n";
                                })
                                .collect(Collectors.joining()));
                Answer answer = Answer.to("run", campaign.toString(), "--json");
                Answer check = Answer.to("check", campaign.toString());
                for (Answer each : List.of(answer, check)) {
                    assertThat(each.code()).as(headings[c] + each.err()).isIn(0, 1, 2);
                    assertThat(each.out() + each.err())
                            .as(headings[c])
                            .doesNotContain("Exception", "java.", "The program failed", "NaN", "Infinity");
                }
                Files.writeString(campaign.resolve(table), text);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        // the pressure of the law in metres, its rate in bar
        "\"unit\": \"MPa\", \"unit\": \"m\"",
        "\"unit\": \"mm/s\", \"unit\": \"bar\"",
        "\"use_laws\": [ {, '\"use_laws\": [ null, {'",
        "\"formulations\": [ {, '\"formulations\": [ null, {'",
        "\"firings\": [ {, '\"firings\": [ null, {'",
        "\"cautions\": [ \", '\"cautions\": [ null, \"'",
        "\"covariance\": [ [, '\"covariance\": [ [ null,'",
        "\"covariance\": [ [, '\"covariance\": [ null, ['",
    })
    void aDocumentWithAUnitOfTheWrongKindOrNullInAList(String from, String to) throws IOException {
        String sound = Answer.to("run", campaign.toString(), "--json").out();
        int at = sound.indexOf(from, sound.indexOf("\"formulations\"") - 20);
        assertThat(at).as(from).isPositive();
        refused(sound, sound.substring(0, at) + to + sound.substring(at + from.length()));
    }

    @Test
    void aDocumentOfWhichNoChartCanBeDrawn() throws IOException {
        String sound = Answer.to("run", campaign.toString(), "--json").out();
        refused(sound, sound.replaceAll("(?<start>\"pressure_low\": \\{\\s*\"value\": )[^,]+", "${start}0.0"));
    }

    private void refused(String sound, String spoiled) throws IOException {
        assertThat(spoiled).isNotEqualTo(sound);
        Path good = Files.writeString(folder.resolve("good.json"), sound);
        Path bad = Files.writeString(folder.resolve("bad.json"), spoiled);
        String drawn = folder.resolve("drawn").toString();
        for (String[] words : new String[][] {
            {"render", bad.toString(), "-o", drawn},
            {"plan", bad.toString()},
            {"compare", good.toString(), bad.toString()}
        }) {
            Answer answer = Answer.to(words);
            assertThat(answer.code()).as(words[0] + answer.out() + answer.err()).isEqualTo(2);
            assertThat(answer.err()).contains("bad.json").doesNotContain("Exception", "java.", "fault of the program");
        }
        assertThat(Path.of(drawn)).doesNotExist();
    }
}
