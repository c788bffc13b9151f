package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages on paper. */
class ReportPrintIT extends OpenedReports {

    /** Of a sheet less the margins of the style sheet, in CSS pixels. */
    private static final double A4_WIDTH = (210 - 26) / 25.4 * 96;

    private static final double A4_HEIGHT = (297 - 28) / 25.4 * 96;
    private static final double LETTER_WIDTH = (215.9 - 26) / 25.4 * 96;
    private static final double LETTER_HEIGHT = (279.4 - 28) / 25.4 * 96;

    @BeforeAll
    static void writeReports() throws IOException {
        write(SampleDocument.rich(), "rich");
        write(HostileDocument.document(), "hostile");
        write(SampleDocument.bare(), "bare");
        write(SampleDocument.one(), "one");
        write(threeLaws(), "three");
    }

    /** The one propellant with a third law between its two. */
    private static Characterization threeLaws() throws IOException {
        JsonNode document = new JsonMapper().readTree(DocumentFile.text(SampleDocument.one()));
        ObjectNode formulation = (ObjectNode) document.at("/formulations/0");
        ObjectNode regimes = (ObjectNode) formulation.get("regimes");
        ArrayNode laws = (ArrayNode) regimes.get("laws");
        ObjectNode between = laws.get(1).deepCopy();
        between.put("regime", "plateau");
        laws.insert(1, between);
        ArrayNode breaks = (ArrayNode) regimes.get("breaks");
        breaks.add(breaks.get(0).deepCopy());
        regimes.put("selected", 3);
        formulation.remove("use_laws");
        return DocumentFile.read("three.json", document.toString().getBytes(StandardCharsets.UTF_8))
                .match(read -> read.document(), refused -> {
                    throw new AssertionError(refused.text());
                });
    }

    @ParameterizedTest
    @CsvSource({"one, 8.27, 11.69", "one, 8.5, 11", "three, 8.27, 11.69", "three, 8.5, 11"})
    void theFirstPrintedPageIsTheDataSheet(String report, double width, double height) throws IOException {
        double top = (height - 28 / 25.4) * 96;
        browser.open(file(report + "/index.html"), (int) ((width - 26 / 25.4) * 96));
        browser.media("print", "light");
        assertThat(browser.number("document.querySelector('details.sheet').getBoundingClientRect().bottom + scrollY"))
                .as("foot of the data sheet on a page of %s px", top)
                .isLessThanOrEqualTo(top);
        assertThat(browser.texts("""
                        Array.from(document.querySelectorAll('.laws table'))
                          .filter(e => e.getBoundingClientRect().right > e.closest('.laws > div').getBoundingClientRect().right + 1)
                          .map(e => e.textContent)"""))
                .as("tables of coefficients that run into the next")
                .isEmpty();
        assertThat(browser.texts("[getComputedStyle(document.querySelector('.points')).breakBefore]"))
                .containsExactly("page");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void noChartIsCutAndNoTableIsTooWideOnPaper(String page) throws IOException {
        for (double[] sheet : new double[][] {{A4_WIDTH, A4_HEIGHT}, {LETTER_WIDTH, LETTER_HEIGHT}}) {
            browser.open(file(page), (int) sheet[0]);
            browser.media("print", "light");
            assertThat(browser.texts("""
                            Array.from(document.querySelectorAll('figure, figure svg, table, p, li'))
                              .filter(e => e.getClientRects().length > 0)
                              .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
                              .map(e => e.tagName + ' ' + Math.round(e.getBoundingClientRect().right) + ' '
                                + e.textContent.slice(0, 60))"""))
                    .as("wider than a sheet of %s px", sheet[0])
                    .isEmpty();
            assertThat(browser.texts("""
                            Array.from(document.querySelectorAll('figure'))
                              .filter(e => e.getClientRects().length > 0)
                              .filter(e => getComputedStyle(e).breakInside !== 'avoid'
                                || e.getBoundingClientRect().height > %s)
                              .map(e => e.getBoundingClientRect().height + ' ' + e.textContent.slice(0, 60))""".formatted(sheet[1])))
                    .as("a figure that a page break may cut")
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({"8.27, 11.69", "8.5, 11"})
    void aReportIsPrinted(double width, double height) throws IOException {
        browser.open(file("rich/index.html"), 1200);
        Object data = browser.driver()
                .executeCdpCommand("Page.printToPDF", Map.of("paperWidth", width, "paperHeight", height))
                .get("data");
        byte[] pdf = Base64.getDecoder().decode((String) data);
        assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    }
}
