package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A campaign whose names and notes attack whatever shows them, from the folder to pages, tables and terminal. */
class HostileTextTest {

    private static final String MARKUP = "</script><script>alert(1)</script><img src=x onerror=alert(1)>";
    private static final String QUOTES = "\" onload=\"alert(1)\" ' & --> ]]> ${7*7} \\";

    /** In YAML's double quotes these become an escape sequence, a bell, and marks that turn the direction. */
    private static final String CONTROLS = "\\e[2J\\a\\u202Etxt.exe\\u202C\\u2028\\u200B";

    @TempDir
    private static Path folder;

    private static String said;

    @BeforeAll
    static void run() throws IOException {
        Path campaign = Files.createDirectories(folder.resolve("campaign/traces"));
        campaign = campaign.getParent();
        Files.writeString(campaign.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: "MARKUP CONTROLS"
                prepared_by: "QUOTED =HYPERLINK(1)"
                licence: "@SUM(1)"
                note: "MARKUP QUOTED"
                ambient_pressure: 101.3 kPa
                formulations:
                  base:
                    title: "=cmd|' /C calc'!A0 MARKUP"
                    baseline: true
                  more:
                    title: "+1 CONTROLS"
                    compare_with: base
                    additive: "MARKUP QUOTED CONTROLS"
                    additive_fraction: 1 %
                trace: {pressure_kind: gauge}
                """.replace("MARKUP", MARKUP)
                .replace("QUOTED", QUOTES.replace("\\", "\\\\").replace("\"", "\\\""))
                .replace("CONTROLS", CONTROLS));
        StringBuilder points =
                new StringBuilder("point,formulation,pressure [MPa],rate [mm/s],pressure_kind,use,note\n");
        for (int i = 0; i < 5; i++) {
            points.append(
                    "=1+%d,base,%d,%.2f,absolute,,\"%s\"\n".formatted(i, i + 1, 5 * Math.pow(i + 1, 0.4), MARKUP));
            points.append("\"<b>%d</b>\",more,%d,%.2f,absolute,,@x\n".formatted(i, i + 1, 6 * Math.pow(i + 1, 0.4)));
        }
        points.append("-2+3,base,2,9,absolute,\"no: %s\u202E\u001b[31m\",x\n".formatted(MARKUP));
        Files.writeString(campaign.resolve("points.csv"), points);
        Files.writeString(campaign.resolve("traces/<b>&.csv"), "time [s],<script>[MPa]\n0,1\n\u001b[31m,\u202E\n");
        Files.writeString(
                campaign.resolve("firings.csv"),
                "firing,formulation,trace,grain,segments,core_diameter [mm],outer_diameter [mm],segment_length [mm],"
                        + "throat_diameter [mm],propellant_mass [g],note\n"
                        + "\"@%s\",base,traces/<b>&.csv,bates,2,14,38,62,9,218,\"%s\"\n".formatted(MARKUP, MARKUP));
        StringWriter words = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(words, true), new PrintWriter(words, true))
                .execute(
                        "run",
                        campaign.toString(),
                        "-o",
                        folder.resolve("report").toString());
        said = words.toString();
        assertThat(code).as(said).isIn(0, 1);
    }

    private static Map<String, String> files(String ending) throws IOException {
        return RunnableJar.files(folder.resolve("report")).entrySet().stream()
                .filter(file -> file.getKey().endsWith(ending))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    @Test
    void noPageRunsWhatWasWritten() throws IOException {
        Map<String, String> pages = files(".html");
        assertThat(pages).hasSizeGreaterThan(1);
        pages.forEach((name, text) -> {
            Document page = Jsoup.parse(text);
            assertThat(page.select("img, iframe, object, embed, base")).as(name).isEmpty();
            assertThat(page.select("script").eachText()).as(name).noneMatch(script -> script.contains("alert"));
            for (Element element : page.getAllElements()) {
                element.attributes()
                        .forEach(attribute -> assertThat(attribute.getKey())
                                .as(name + ": " + element.tagName())
                                .doesNotStartWith("on"));
            }
            for (Element script : page.select("script")) {
                boolean data = script.attr("type").endsWith("json");
                assertThat(data || !script.data().contains("alert(1)")).as(name).isTrue();
            }
            assertThat(page.text()).as(name).contains("<img src=x onerror=alert(1)>");
        });
    }

    @Test
    void nothingTurnsOrHidesTextAnywhere() throws IOException {
        files("")
                .forEach((name, text) -> assertThat(text.codePoints()
                                .filter(c -> c != '\n' && c != '\r')
                                .filter(c -> Character.isISOControl(c)
                                        || Character.getType(c) == Character.FORMAT
                                        || c == 0x2028))
                        .as(name)
                        .isEmpty());
        assertThat(said.codePoints().filter(c -> Character.isISOControl(c) && c != '\n' || c == 0x202E || c == 0x202C))
                .as(said)
                .isEmpty();
    }

    @Test
    void noCellIsAFormula() throws IOException {
        Map<String, String> tables = files(".csv");
        assertThat(tables).hasSize(2);
        tables.forEach((name, text) -> CsvReader.builder()
                .ofCsvRecord(text)
                .forEach(row -> row.getFields().stream()
                        .filter(cell -> !cell.matches("-?[0-9.]+(E-?[0-9]+)?"))
                        .forEach(cell -> assertThat(cell).as(name).doesNotMatch("(?s)^\\s*[=+@\\t\\r-].*"))));
        assertThat(tables.get("rates.csv")).contains("'=1+0").contains("'-2+3");
    }

    @Test
    void picturesAreXmlWithoutScripts() throws IOException {
        Map<String, String> pictures = files(".svg");
        assertThat(pictures).isNotEmpty();
        pictures.forEach((name, text) -> {
            Document picture = Jsoup.parse(text, Parser.xmlParser());
            assertThat(picture.select("script, foreignObject, image, a"))
                    .as(name)
                    .isEmpty();
        });
    }

    @Test
    void theDocumentHoldsTheWordsAsTheyWereWritten() throws IOException {
        JsonNode document = JsonMapper.builder()
                .build()
                .readTree(folder.resolve("report/burnlaw.json").toFile());
        assertThat(document.at("/campaign/title").asText())
                .isEqualTo(MARKUP + " \u001b[2J\u0007\u202Etxt.exe\u202C\u2028\u200B");
        assertThat(document.at("/campaign/prepared_by").asText()).isEqualTo(QUOTES + " =HYPERLINK(1)");
        List<String> ids = document.at("/formulations/0/points").findValuesAsText("id");
        assertThat(ids).contains("=1+0", "-2+3");
    }
}
