package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A browser of the Chromium family without a window, and what a test wants to know of a page in it. */
final class Browser implements AutoCloseable {

    /** Browsers that the driver can drive, by their programs. */
    private static final List<String> BROWSERS = List.of(
            "chromium",
            "chromium-browser",
            "google-chrome",
            "google-chrome-stable",
            "chrome",
            "microsoft-edge",
            "msedge");

    private static final List<String> DRIVERS = List.of("chromedriver", "msedgedriver");

    /** Axe-core 4.6.3, all its rules for WCAG 2.0, 2.1 and 2.2, level AA, and those that it calls best practice. */
    private static final String VIOLATIONS = """
            const done = arguments[arguments.length - 1];
            axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}).then(
              found => done(found.violations.flatMap(rule => rule.nodes.map(
                node => rule.id + ': ' + node.html.slice(0, 200) + ' ' + (node.failureSummary || '')))),
              error => done(['axe failed: ' + error]));""";

    private final ChromeDriver driver;

    Browser(Path profile) {
        Optional<File> browser = program("BURNLAW_BROWSER", BROWSERS);
        Optional<File> chromeDriver = program("BURNLAW_DRIVER", DRIVERS);
        String missing =
                "no browser of the Chromium family with its driver was found: install chromium and chromium-driver, or"
                        + " name them by BURNLAW_BROWSER and BURNLAW_DRIVER";
        if (System.getenv("CI") != null) {
            assertThat(List.of(browser.isPresent(), chromeDriver.isPresent()))
                    .as(missing)
                    .containsOnly(true);
        }
        assumeTrue(browser.isPresent() && chromeDriver.isPresent(), missing);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.get());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-background-networking",
                "--user-data-dir=" + profile);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(chromeDriver.get())
                        .build(),
                options);
        driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
    }

    /** By the variable, else the first of the names on the path. */
    private static Optional<File> program(String variable, List<String> names) {
        Stream<File> stated = Optional.ofNullable(System.getenv(variable)).map(File::new).stream();
        String[] folders = System.getenv().getOrDefault("PATH", "").split(File.pathSeparator);
        Stream<File> found =
                names.stream().flatMap(name -> Arrays.stream(folders).map(folder -> new File(folder, name)));
        return Stream.concat(stated, found).filter(File::canExecute).findFirst();
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Opens a file in a window of that width, with all its parts unfolded. */
    void open(Path file, int width) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 800, "deviceScaleFactor", 1, "mobile", false));
        driver.manage().logs().get(LogType.BROWSER);
        driver.manage().logs().get(LogType.PERFORMANCE);
        driver.get(file.toUri().toString());
        driver.executeScript("document.querySelectorAll('details').forEach(each => each.open = true)");
    }

    /** For the pages opened after this. */
    void scheme(String lightOrDark) {
        media("", lightOrDark);
    }

    /** For the page that is open, too. */
    void media(String screenOrPrint, String lightOrDark) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        screenOrPrint,
                        "features",
                        List.of(Map.of("name", "prefers-color-scheme", "value", lightOrDark))));
    }

    double number(String expression) {
        return ((Number) driver.executeScript("return " + expression)).doubleValue();
    }

    @SuppressWarnings("unchecked")
    List<String> texts(String expression) {
        return (List<String>) driver.executeScript("return " + expression);
    }

    /** All that the page put on the console since it was opened. */
    List<String> console() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::getMessage)
                .toList();
    }

    /** The addresses that were asked for since the page was opened, itself among them. */
    List<String> requests() throws IOException {
        JsonMapper mapper = new JsonMapper();
        List<String> addresses = new java.util.ArrayList<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            JsonNode message = mapper.readTree(entry.getMessage()).path("message");
            if (message.path("method").asText().equals("Network.requestWillBeSent")) {
                addresses.add(message.at("/params/request/url").asText());
            }
        }
        return addresses;
    }

    List<?> accessibilityViolations() throws IOException {
        try (InputStream script =
                Browser.class.getResourceAsStream("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js")) {
            driver.executeScript(new String(script.readAllBytes(), StandardCharsets.UTF_8));
        }
        return (List<?>) driver.executeAsyncScript(VIOLATIONS);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
