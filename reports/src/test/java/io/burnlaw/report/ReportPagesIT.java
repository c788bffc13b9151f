package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The pages in a browser, opened as files. Where no Chromium is installed this class is skipped. */
class ReportPagesIT {

    private static final File BROWSER = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");

    /** What axe-core 4.6.3 finds by the rules of WCAG 2.1, without what it calls minor or moderate. */
    private static final String VIOLATIONS = "const done = arguments[arguments.length - 1];"
            + "axe.run().then(found => done(found.violations"
            + ".filter(rule => rule.impact === 'serious' || rule.impact === 'critical')"
            + ".flatMap(rule => rule.nodes.map(node => rule.id + ': ' + node.html.slice(0, 200) + ' '"
            + " + (node.failureSummary || '')))),"
            + " error => done(['axe failed: ' + error]));";

    @TempDir
    static Path work;

    private static ChromeDriver browser;

    @BeforeAll
    static void writeAReportAndOpenABrowser() throws IOException {
        assumeTrue(BROWSER.canExecute() && DRIVER.canExecute(), "no chromium and chromedriver here");
        ReportWriter.write(SampleDocument.rich(), work.resolve("out"), ReportWriter.Options.EVERYTHING);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(BROWSER);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-background-networking",
                "--user-data-dir=" + work.resolve("profile"));
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
        browser = new ChromeDriver(
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build(), options);
        browser.manage().timeouts().scriptTimeout(Duration.ofMinutes(1));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"index.html", "firings"})
    void aPageFitsATelephoneAndTheConsoleStaysSilent(String page) throws IOException {
        open(page, 360);
        assertThat(number("return document.documentElement.scrollWidth"))
                .as("width of the page in a window of 360 px: %s", browser.executeScript("""
                        return Array.from(document.querySelectorAll('body *'))
                          .filter(e => e.getBoundingClientRect().right > 361).slice(0, 8)
                          .map(e => e.tagName + '.' + e.getAttribute('class') + ' ' + e.textContent.slice(0, 40))"""))
                .isLessThanOrEqualTo(360);
        assertThat(browser.manage().logs().get(LogType.BROWSER).getAll())
                .filteredOn(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .isEmpty();
    }

    @Test
    void thePageCarriesTheDocumentThatLiesBesideIt() throws IOException {
        open("index.html", 1200);
        assertThat(browser.executeScript("return document.getElementById('burnlaw-document').textContent"))
                .isEqualTo(Files.readString(work.resolve("out/burnlaw.json")));
    }

    @Test
    void aSortButtonPutsTheRowsInOrderAndThenInTheOther() throws IOException {
        open("index.html", 1200);
        List<String> written = firstColumn();
        browser.findElement(By.cssSelector("table.sortable button.sort")).click();
        List<String> up = firstColumn();
        browser.findElement(By.cssSelector("table.sortable button.sort")).click();
        List<String> down = firstColumn();
        assertThat(up).containsExactlyInAnyOrderElementsOf(written);
        assertThat(down).containsExactlyElementsOf(reversed(up)).isNotEqualTo(up);
        assertThat(browser.findElement(By.cssSelector("table.sortable th")).getDomAttribute("aria-sort"))
                .isEqualTo("descending");
    }

    @ParameterizedTest
    @CsvSource({"index.html,light", "index.html,dark", "firings,light", "firings,dark"})
    void nothingSeriousKeepsAnybodyOut(String page, String scheme) throws IOException {
        browser.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
        open(page, 1200);
        browser.executeScript(axe());
        assertThat((List<?>) browser.executeAsyncScript(VIOLATIONS)).isEmpty();
    }

    private static void open(String page, int width) throws IOException {
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 800, "deviceScaleFactor", 1, "mobile", false));
        browser.manage().logs().get(LogType.BROWSER);
        browser.get(file(page).toUri().toString());
        browser.executeScript("document.querySelectorAll('details').forEach(each => each.open = true)");
    }

    /** The page of that name, or the first one in the folder of that name. */
    private static Path file(String page) throws IOException {
        Path found = work.resolve("out").resolve(page);
        if (Files.isRegularFile(found)) {
            return found;
        }
        try (Stream<Path> all = Files.list(found)) {
            return all.min(Path::compareTo).orElseThrow();
        }
    }

    private static List<String> firstColumn() {
        return browser
                .findElement(By.cssSelector("table.sortable"))
                .findElements(By.cssSelector("tbody tr > :first-child"))
                .stream()
                .map(cell -> cell.getText())
                .toList();
    }

    private static List<String> reversed(List<String> texts) {
        return Stream.iterate(texts.size() - 1, i -> i >= 0, i -> i - 1)
                .map(texts::get)
                .toList();
    }

    private static double number(String script) {
        return ((Number) browser.executeScript(script)).doubleValue();
    }

    private static String axe() throws IOException {
        try (InputStream script =
                ReportPagesIT.class.getResourceAsStream("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
