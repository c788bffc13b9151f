package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.ThroatTable;
import io.burnlaw.report.document.TraceHistory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The pages in a browser, opened as files: the usual way to read a report. */
class ReportPagesIT {

    /** Of a sheet less the margins of the style sheet, in CSS pixels. */
    private static final double A4_WIDTH = (210 - 26) / 25.4 * 96;

    private static final double A4_HEIGHT = (297 - 28) / 25.4 * 96;
    private static final double LETTER_WIDTH = (215.9 - 26) / 25.4 * 96;
    private static final double LETTER_HEIGHT = (279.4 - 28) / 25.4 * 96;

    @TempDir
    static Path work;

    private static Browser browser;

    @BeforeAll
    static void writeReportsAndOpenABrowser() throws IOException {
        ReportWriter.write(SampleDocument.rich(), work.resolve("rich"), ReportWriter.Options.EVERYTHING);
        ReportWriter.write(HostileDocument.document(), work.resolve("hostile"), ReportWriter.Options.EVERYTHING);
        ReportWriter.write(SampleDocument.bare(), work.resolve("bare"), ReportWriter.Options.EVERYTHING);
        ReportWriter.write(one(), work.resolve("one"), ReportWriter.Options.EVERYTHING);
        browser = new Browser(work.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void lookAtAScreen() {
        browser.media("", "light");
    }

    /** One page of each kind: all of them would be more of the same. */
    static Stream<String> pages() {
        return Stream.of(
                "rich/index.html",
                "rich/firings/OR-03.html",
                "rich/firings/OR-09.html",
                "rich/firings/OS-1.html",
                "bare/index.html",
                "hostile/index.html",
                "hostile/firings");
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
        browser.driver()
                .findElement(By.cssSelector("a[data-file='" + name + "']"))
                .click();
        new WebDriverWait(browser.driver(), Duration.ofSeconds(30)).until(any -> Files.exists(alone.resolve(name)));
        assertThat(alone.resolve(name))
                .hasSameTextualContentAs(work.resolve("rich").resolve(name));
        assertThat(browser.console()).isEmpty();
    }

    /** One propellant of the sample, with what belongs to it. */
    private static Characterization one() {
        Characterization rich = SampleDocument.rich();
        String id = rich.formulations().get(0).id();
        return new Characterization(
                rich.format(),
                rich.generator(),
                rich.created(),
                rich.campaign(),
                rich.inputs(),
                rich.formulations().subList(0, 1),
                rich.firings().stream()
                        .filter(firing -> firing.formulation().equals(id))
                        .toList(),
                List.of(),
                List.of(),
                rich.plans().stream()
                        .filter(plan -> plan.formulation().equals(id))
                        .toList(),
                rich.cautions(),
                rich.leftOut());
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

    @ParameterizedTest
    @CsvSource({"8.27, 11.69", "8.5, 11"})
    void theFirstPrintedPageIsTheDataSheet(double width, double height) throws IOException {
        double top = (height - 28 / 25.4) * 96;
        browser.open(file("one/index.html"), (int) ((width - 26 / 25.4) * 96));
        browser.media("print", "light");
        assertThat(browser.number("document.querySelector('details.sheet').getBoundingClientRect().bottom + scrollY"))
                .as("foot of the data sheet on a page of %s px", top)
                .isLessThanOrEqualTo(top);
        assertThat(browser.texts("[getComputedStyle(document.querySelector('.points')).breakBefore]"))
                .containsExactly("page");
    }

    @Test
    void wordsOfACampaignNeverRun() throws IOException {
        browser.open(file("hostile/index.html"), 1200);
        assertThat(browser.number("document.querySelectorAll('img, script:not([type]) ~ script').length"))
                .isZero();
    }

    @ParameterizedTest
    @CsvSource({"mouse", "keyboard"})
    void aHeadingPutsTheRowsInOrderAndThenInTheOther(String by) throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement table = browser.driver().findElement(By.cssSelector("#firings ~ .scroll table.sortable"));
        WebElement heading = table.findElements(By.cssSelector("thead th")).stream()
                .filter(each -> each.getText().startsWith("Pressure"))
                .findFirst()
                .orElseThrow();
        List<String> written = firstColumn(table);
        press(heading, by);
        List<String> up = firstColumn(table);
        assertThat(heading.getDomAttribute("aria-sort")).isEqualTo("ascending");
        assertThat(up).containsExactlyInAnyOrderElementsOf(written);
        // the invented pressures rise in both propellants from firing to firing; the rejected one has none
        assertThat(up.subList(0, 2)).containsExactly("OR-01", "OR-02");
        assertThat(up).last().isEqualTo("OR-09");
        press(heading, by);
        List<String> down = firstColumn(table);
        assertThat(heading.getDomAttribute("aria-sort")).isEqualTo("descending");
        assertThat(down).first().isEqualTo("OR-08");
        assertThat(down).last().as("what has no number stays last").isEqualTo("OR-09");
    }

    @Test
    void aPointSaysWhatItIsWhenThePointerIsNear() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement point = browser.driver().findElement(By.cssSelector("#answer ~ * svg.chart .hit"));
        new Actions(browser.driver())
                .scrollToElement(point)
                .moveToElement(point)
                .perform();
        String said = browser.driver()
                .findElement(By.cssSelector("#answer ~ * figure .readout"))
                .getText();
        assertThat(said).contains("OR-01");
    }

    @Test
    void aThroatIsReadFromTheTableOfTheDocument() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        ThroatTable table = SampleDocument.rich().plans().get(0).throatTable();
        double first = table.throat().get(0);
        double last = table.throat().get(table.throat().size() - 1);
        SplittableRandom random = new SplittableRandom(20261129);
        List<Double> throats = random.doubles(1000, first, last).boxed().toList();
        List<?> seen = (List<?>) browser.driver().executeScript("""
                const typed = document.querySelector('.explorer input[type=number]');
                const out = document.querySelectorAll('.explorer dd');
                return arguments[0].map(throat => {
                  typed.value = throat;
                  typed.dispatchEvent(new Event('input'));
                  return Array.from(out).slice(0, 3).map(each => Number(each.dataset.value));
                });""", throats);
        for (int i = 0; i < throats.size(); i++) {
            List<?> figures = (List<?>) seen.get(i);
            List<List<Double>> columns = List.of(table.mean(), table.max(), table.burnTime());
            for (int k = 0; k < columns.size(); k++) {
                // logarithm and exponential of two languages
                assertThat(((Number) figures.get(k)).doubleValue() / between(table, columns.get(k), throats.get(i)))
                        .isCloseTo(1, within(1e-9));
            }
        }
    }

    private static double between(ThroatTable table, List<Double> column, double throat) {
        int above = 1;
        while (table.throat().get(above) < throat) {
            above++;
        }
        double share = Math.log(throat / table.throat().get(above - 1))
                / Math.log(table.throat().get(above) / table.throat().get(above - 1));
        return Math.pow(column.get(above - 1), 1 - share) * Math.pow(column.get(above), share);
    }

    @Test
    void theThroatStopsWhereTheCaseEndsAndSaysWhy() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        ThroatTable table = SampleDocument.rich().plans().get(0).throatTable();
        WebElement typed = browser.driver().findElement(By.cssSelector(".explorer input[type=number]"));
        WebElement slider = browser.driver().findElement(By.cssSelector(".explorer input[type=range]"));
        WebElement said = browser.driver().findElement(By.cssSelector(".explorer [role=status]"));
        typed.sendKeys(Keys.chord(Keys.CONTROL, "a"), "5", Keys.TAB);
        assertThat(said.getText()).startsWith(table.smaller());
        assertThat(typed.getDomProperty("value")).isEqualTo("7.210");
        slider.sendKeys(Keys.END);
        assertThat(said.getText()).contains("May fall into the slow regime below 1.10 MPa.");
        slider.sendKeys(Keys.HOME);
        assertThat(said.getText()).startsWith(table.smaller());
        slider.sendKeys(Keys.ARROW_RIGHT);
        assertThat(said.getText()).isEmpty();
        // the marker is where the throat is
        WebElement picture = browser.driver().findElement(By.cssSelector(".explorer svg"));
        new Actions(browser.driver())
                .scrollToElement(picture)
                .moveToElement(picture)
                .click()
                .perform();
        double middle = Double.parseDouble(typed.getDomProperty("value"));
        assertThat(middle).isBetween(8.5, 11.5);
    }

    @Test
    void aFiringIsLeftOutFromThePointTheRowAndTheKeyboardAlike() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement article = browser.driver().findElement(By.cssSelector("article[data-formulation=orchard]"));
        WebElement said = article.findElement(By.cssSelector(".said"));
        String usual = said.getText();
        WebElement hit = article.findElement(By.cssSelector(".hit[data-id='OR-05']"));
        WebElement row = browser.driver().findElement(By.cssSelector("tr[data-firing='OR-05']"));
        WebElement point = article.findElement(By.cssSelector("tr[data-id='OR-05']"));
        row.findElement(By.cssSelector(".pick")).click();
        // the invented law without it, as the document has it
        assertThat(said.getText())
                .startsWith("Without OR-05: ")
                .contains("r = 5.3100 \u00b7 P^0.3410 (mm/s, MPa)")
                .contains("the rate is 0.40 % higher")
                .contains("n 0.011 higher");
        assertThat(article.findElements(By.cssSelector(".without path"))).hasSize(1);
        for (WebElement each : List.of(hit, row, point)) {
            assertThat(each.getDomAttribute("class")).contains("chosen");
        }
        assertThat(point.findElement(By.cssSelector(".pick")).getDomAttribute("aria-pressed"))
                .isEqualTo("true");
        point.findElement(By.cssSelector(".pick")).sendKeys(Keys.ENTER);
        assertThat(said.getText()).isEqualTo(usual);
        new Actions(browser.driver())
                .scrollToElement(hit)
                .moveToElement(hit)
                .click()
                .perform();
        assertThat(said.getText()).startsWith("Without OR-05: ");
        WebElement first = article.findElement(By.cssSelector(".hit[tabindex='0']"));
        first.sendKeys(Keys.ARROW_RIGHT);
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        assertThat(said.getText()).startsWith("Without OR-").doesNotStartWith("Without OR-05");
        browser.driver().switchTo().activeElement().sendKeys(Keys.ESCAPE);
        assertThat(said.getText()).isEqualTo(usual);
        assertThat(article.findElements(By.cssSelector(".without path"))).isEmpty();
    }

    @Test
    void anotherReportIsComparedWhereItIsChosenOrDropped() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement part = browser.driver().findElement(By.cssSelector("details.live:has(#other-report)"));
        WebElement said = part.findElement(By.cssSelector("[role=status]"));
        WebDriverWait wait = new WebDriverWait(browser.driver(), Duration.ofSeconds(30));
        part.findElement(By.id("other-report"))
                .sendKeys(work.resolve("hostile/index.html").toString());
        wait.until(any -> said.getText().startsWith("Read: "));
        assertThat(part.getText()).contains("They were measured apart").contains("<script>");
        assertThat(part.findElements(By.cssSelector("svg .s-s1, svg .s-s2"))).hasSizeGreaterThanOrEqualTo(2);
        assertThat(part.findElements(By.cssSelector("script, img"))).isEmpty();
        for (String[] wrong : new String[][] {
            {"{\"format\": \"another/1\"}", "its format is another/1"},
            {"{", "it is not JSON"},
            {"null", "members are missing"}
        }) {
            browser.driver().executeScript("""
                    const dropped = new DataTransfer();
                    dropped.items.add(new File([arguments[0]], 'dropped.json'));
                    document.body.dispatchEvent(new DragEvent('drop', {dataTransfer: dropped, bubbles: true, cancelable: true}));""", wrong[0]);
            wait.until(any -> said.getText().contains(wrong[1]));
            assertThat(part.findElements(By.cssSelector("svg"))).isEmpty();
        }
        browser.driver().executeScript("""
                const dropped = new DataTransfer();
                dropped.items.add(new File([document.getElementById('burnlaw-document').textContent], 'dropped.json'));
                document.body.dispatchEvent(new DragEvent('drop', {dataTransfer: dropped, bubbles: true, cancelable: true}));""");
        wait.until(any -> said.getText().equals("Read: dropped.json"));
        assertThat(part.getText()).contains("Orchard sugar, first characterization (invented)");
        assertThat(browser.console()).isEmpty();
        assertThat(browser.accessibilityViolations()).isEmpty();
        assertThat(browser.requests()).hasSize(1);
    }

    @Test
    void aTraceIsReadByACursorAndLookedAtCloser() throws IOException {
        browser.open(file("rich/firings/OR-03.html"), 1200);
        WebElement figure = browser.driver().findElement(By.cssSelector("figure.course"));
        WebElement said = figure.findElement(By.cssSelector(".said"));
        WebElement slider = figure.findElement(By.cssSelector("input[type=range]"));
        Firing firing = SampleDocument.rich().firings().get(2);
        String before = said.getText();
        slider.sendKeys(Keys.ARROW_RIGHT);
        assertThat(said.getText()).isNotEqualTo(before).contains(" MPa measured");
        double time = Double.parseDouble(said.getText().split(" ")[0]);
        double read = Double.parseDouble(said.getText().split(" ")[2]);
        // three digits of it, and lines drawn to a hundredth of a unit of the sheet, of some 5 MPa on 225
        assertThat(read).isCloseTo(at(firing.traceHistory(), time), within(0.02));
        List<String> labels = browser.texts(
                "Array.from(document.querySelectorAll('figure.course .across text')).map(e => e.textContent)");
        button(figure, "Closer").click();
        button(figure, "Closer").sendKeys(Keys.ENTER);
        assertThat(browser.texts("[document.querySelector('figure.course .across').style.display]"))
                .containsExactly("none");
        assertThat(browser.number("document.querySelector('figure.course svg svg').viewBox.baseVal.width"))
                .isCloseTo(
                        browser.number("Number(document.querySelector('.plot').dataset.size.split(' ')[0])") / 4,
                        within(0.1));
        button(figure, "Whole record").click();
        assertThat(browser.texts("[document.querySelector('figure.course .across').style.display]"))
                .containsExactly("");
        assertThat(labels).isNotEmpty();
        browser.open(file("rich/index.html"), 1200);
        WebElement all = browser.driver().findElement(By.cssSelector("figure.course[data-names]"));
        assertThat(all.findElement(By.cssSelector(".said")).getText())
                .contains("lowest with")
                .contains("OR-");
    }

    private static WebElement button(WebElement figure, String words) {
        return figure.findElements(By.cssSelector("button")).stream()
                .filter(each -> each.getText().equals(words))
                .findFirst()
                .orElseThrow();
    }

    private static double at(TraceHistory history, double time) {
        int above = 1;
        while (history.time().get(above) < time) {
            above++;
        }
        double share = (time - history.time().get(above - 1))
                / (history.time().get(above) - history.time().get(above - 1));
        return history.pressure().get(above - 1)
                + share * (history.pressure().get(above) - history.pressure().get(above - 1));
    }

    @Test
    void theSwitchOfUnitsShowsOneFormulaALawAndIsRemembered() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        for (String units : List.of("psi", "mpa")) {
            browser.driver()
                    .findElement(By.cssSelector("input[name=units][value=" + units + "]"))
                    .click();
            assertThat(browser.driver().findElements(By.cssSelector(".formula")))
                    .filteredOn(WebElement::isDisplayed)
                    .isNotEmpty()
                    .allMatch(line -> line.getDomAttribute("class").endsWith("u-" + units));
        }
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=psi]"))
                .click();
        browser.driver().navigate().refresh();
        assertThat(browser.driver()
                        .findElement(By.cssSelector("input[name=units][value=psi]"))
                        .isSelected())
                .isTrue();
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=mpa]"))
                .click();
    }

    @Test
    void aFormulaIsCopiedWithTheDigitsThatGiveItBack() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement line = browser.driver().findElement(By.cssSelector(".formula.u-mpa"));
        line.findElement(By.cssSelector("button.copy")).click();
        assertThat(line.findElement(By.cssSelector("button.copy")).getText()).isEqualTo("Copied");
        Matcher copied =
                Pattern.compile("r = ([0-9.]+) \\* P\\^(-?[0-9.]+)").matcher(line.getDomAttribute("data-copy"));
        assertThat(copied.find()).isTrue();
        Law law = SampleDocument.rich().formulations().get(0).useLaws().get(0);
        for (double pressure :
                new double[] {law.pressureLow().value(), law.pressureHigh().value()}) {
            double seen = Double.parseDouble(copied.group(1)) * Math.pow(pressure, Double.parseDouble(copied.group(2)));
            double meant = law.coefficient().value()
                    * Math.pow(pressure, law.exponent().value());
            // 0.05 %: less than any of the intervals is wide
            assertThat(seen / meant).isCloseTo(1, within(5e-4));
        }
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

    private static void press(WebElement heading, String by) {
        WebElement button = heading.findElement(By.cssSelector("button.sort"));
        if (by.equals("mouse")) {
            button.click();
        } else {
            button.sendKeys(Keys.ENTER);
        }
    }

    private static String visibleWords() {
        return (String) browser.driver()
                .executeScript(
                        "document.querySelectorAll('.readout, .copy, .live, .pick, svg').forEach(e => e.remove());"
                                + "return document.querySelector('main').textContent");
    }

    /** The page of that name, or the first one in the folder of that name. */
    private static Path file(String page) throws IOException {
        Path found = work.resolve(page);
        if (Files.isRegularFile(found)) {
            return found;
        }
        try (Stream<Path> all = Files.list(found)) {
            return all.min(Comparator.naturalOrder()).orElseThrow();
        }
    }

    private static List<String> firstColumn(WebElement table) {
        return table.findElements(By.cssSelector("tbody tr > :first-child")).stream()
                .map(cell -> cell.getText().replace("\u2296", "").strip())
                .toList();
    }
}
