package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** What each page is: for a telephone, in dark, by screen reader, sent alone, without its script. */
class ReportPagesIT extends OpenedReports {

    @BeforeAll
    static void writeReports() throws IOException {
        write(SampleDocument.rich(), "rich");
        write(HostileDocument.document(), "hostile");
        write(SampleDocument.bare(), "bare");
        write(SampleDocument.one(), "one");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void aPageFitsATelephone(String page) throws IOException {
        browser.open(file(page), 360);
        assertThat(browser.number("document.documentElement.scrollWidth"))
                .as("width of the page in a window of 360 px: %s", browser.texts("""
                        Array.from(document.querySelectorAll('body *'))
                          .filter(e => e.getBoundingClientRect().right > 361).slice(0, 8)
                          .map(e => e.tagName + '.' + e.getAttribute('class') + ' ' + e.textContent.slice(0, 40))"""))
                .isLessThanOrEqualTo(360);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theConsoleStaysSilentAndNothingIsAskedFor(String page) throws IOException {
        Path file = file(page);
        browser.open(file, 1200);
        assertThat(browser.console()).isEmpty();
        assertThat(browser.requests())
                .contains(file.toUri().toString())
                .allMatch(address -> address.equals(file.toUri().toString()) || address.startsWith("data:"));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void nobodyIsKeptOutInLightOrDark(String page) throws IOException {
        for (String scheme : List.of("light", "dark")) {
            browser.scheme(scheme);
            browser.open(file(page), 1200);
            assertThat(browser.accessibilityViolations()).as(scheme).isEmpty();
        }
    }

    @Test
    void darkIsDark() throws IOException {
        browser.scheme("dark");
        browser.open(file("rich/index.html"), 1200);
        List<String> dark = browser.texts("[getComputedStyle(document.body).backgroundColor]");
        browser.scheme("light");
        browser.open(file("rich/index.html"), 1200);
        assertThat(dark).containsExactly("rgb(21, 24, 27)");
        assertThat(browser.texts("[getComputedStyle(document.body).backgroundColor]"))
                .containsExactly("rgb(255, 255, 255)");
    }

    @Test
    void thePageCarriesTheDocumentThatLiesBesideItWithoutTheCourses() throws IOException {
        JsonMapper mapper = new JsonMapper();
        for (String report : List.of("rich", "hostile", "bare")) {
            browser.open(file(report + "/index.html"), 1200);
            JsonNode carried =
                    mapper.readTree(browser.texts("[document.getElementById('burnlaw-document').textContent]")
                            .get(0));
            JsonNode whole =
                    mapper.readTree(work.resolve(report).resolve("burnlaw.json").toFile());
            for (JsonNode firing : whole.path("firings")) {
                ((ObjectNode) firing).remove("trace_history");
                ((ObjectNode) firing).putArray("along");
                ((ObjectNode) firing).putArray("budget");
            }
            ((ObjectNode) carried).remove("left_out");
            assertThat(carried).isEqualTo(whole);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"coefficients.json", "rates.csv", "laws.csv"})
    void aPageSentAloneGivesItsFilesFromInside(String name) throws Exception {
        Path alone = Files.createDirectories(work.resolve("alone"));
        Files.copy(file("rich/index.html"), alone.resolve("sent.html"), StandardCopyOption.REPLACE_EXISTING);
        browser.open(alone.resolve("sent.html"), 1200);
        browser.driver()
                .executeCdpCommand(
                        "Browser.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", alone.toString()));
        WebDriverWait patient = new WebDriverWait(browser.driver(), Duration.ofSeconds(30));
        // what lies far below is laid out only when it comes into view
        WebElement link = browser.driver().findElement(By.cssSelector("a[data-file='" + name + "']"));
        browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", link);
        patient.until(ExpectedConditions.elementToBeClickable(link)).click();
        patient.until(any -> Files.exists(alone.resolve(name)));
        assertThat(alone.resolve(name))
                .hasSameTextualContentAs(work.resolve("rich").resolve(name));
        assertThat(browser.console()).isEmpty();
    }

    @Test
    void onePropellantIsToldOnFourScreensAndLinksUnfoldTheRest() throws IOException {
        browser.open(file("one/index.html"), 1280);
        browser.driver().executeScript("document.querySelectorAll('details').forEach(each => each.open = false)");
        assertThat(browser.number("document.getElementById('laws').getBoundingClientRect().top + scrollY"))
                .isLessThanOrEqualTo(4 * 800);
        for (String part : List.of("laws", "closure", "sheet", "method", "provenance")) {
            browser.driver()
                    .findElement(By.cssSelector(".toc a[href='#" + part + "']"))
                    .click();
            assertThat(browser.driver()
                            .findElement(By.cssSelector("details:has(#" + part + ")"))
                            .getDomAttribute("open"))
                    .as(part)
                    .isNotNull();
        }
        assertThat(browser.driver().findElements(By.cssSelector(".cautions"))).hasSize(1);
        assertThat(browser.console()).isEmpty();
    }

    @Test
    void wordsOfACampaignNeverRun() throws IOException {
        browser.open(file("hostile/index.html"), 1200);
        assertThat(browser.number("document.querySelectorAll('img, script:not([type]) ~ script').length"))
                .isZero();
    }

    @Test
    void thePageSaysTheSameWithoutItsScript() throws IOException {
        Path page = file("rich/index.html");
        browser.open(page, 1200);
        String with = visibleWords();
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
        try {
            browser.driver().get(page.toUri().toString());
            assertThat(browser.driver().findElements(By.cssSelector("button.sort")))
                    .isEmpty();
            assertThat(browser.driver().findElements(By.cssSelector("svg.chart")))
                    .isNotEmpty();
            assertThat(browser.driver().findElement(By.id("answer")).isDisplayed())
                    .isTrue();
        } finally {
            browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
        }
        Element written = Jsoup.parse(Files.readString(page)).selectFirst("main");
        written.select("svg").remove();
        assertThat(with.replaceAll("\\s", "")).isEqualTo(written.wholeText().replaceAll("\\s", ""));
    }

    private static String visibleWords() {
        return (String) browser.driver()
                .executeScript(
                        "document.querySelectorAll('.readout, .copy, .live, .pick, svg').forEach(e => e.remove());"
                                + "return document.querySelector('main').textContent");
    }
}
