package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Plan.ThroatTable;
import java.io.IOException;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** What moves on the pages: tables, the throat, points, traces, units, another report. */
class ReportMovesIT extends OpenedReports {

    @BeforeAll
    static void writeReports() throws IOException {
        write(SampleDocument.rich(), "rich");
        write(HostileDocument.document(), "hostile");
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
        assertThat(part.getText()).contains("They were measured separately").contains("<script>");
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

    @Test
    void tracesAreShownOverTheWebThatTheDocumentGives() throws IOException {
        browser.open(file("rich/index.html"), 1200);
        WebElement all = browser.driver().findElement(By.cssSelector("figure.course[data-webs]"));
        WebElement said = all.findElement(By.cssSelector(".said"));
        List<WebElement> over = all.findElements(By.cssSelector("input[type=radio]"));
        String first = browser.texts(
                        "[document.querySelector('figure.course[data-webs] svg svg path').getAttribute('d')]")
                .get(0);
        over.get(0).sendKeys(Keys.ARROW_RIGHT);
        assertThat(over.get(1).isSelected()).isTrue();
        assertThat(said.getText()).startsWith("50.0 % of the web: ").contains(" lowest with ");
        assertThat(all.getText()).contains("web burned, % of the whole");
        @SuppressWarnings("unchecked")
        List<String> names =
                (List<String>) browser.driver().executeScript("return JSON.parse(arguments[0].dataset.names)", all);
        // where the invented rates give a web: it, and the pressure of the record at that moment
        Firing firing = SampleDocument.rich().firings().stream()
                .filter(each -> each.id().equals(names.get(0)))
                .findFirst()
                .orElseThrow();
        double width = browser.number(
                "Number(document.querySelector('figure.course[data-webs] .plot').dataset.size.split(' ')[0])");
        String[] ends = browser.texts("[document.querySelector('figure.course[data-webs] .plot').dataset.y]")
                .get(0)
                .split(" ");
        double height = browser.number(
                "Number(document.querySelector('figure.course[data-webs] .plot').dataset.size.split(' ')[1])");
        List<?> places = (List<?>) browser.driver().executeScript("""
                return arguments[0].querySelector('svg svg path').getAttribute('d').slice(1).split('L')
                  .map(pair => pair.split(' ').map(Number));""", all);
        assertThat(places).hasSizeGreaterThanOrEqualTo(2);
        for (Object place : places) {
            double web = ((Number) ((List<?>) place).get(0)).doubleValue()
                    / width
                    * firing.web().value();
            double pressure = Double.parseDouble(ends[1])
                    - ((Number) ((List<?>) place).get(1)).doubleValue()
                            / height
                            * (Double.parseDouble(ends[1]) - Double.parseDouble(ends[0]));
            Along near = firing.along().stream()
                    .min(Comparator.comparingDouble(each -> Math.abs(each.web() - web)))
                    .orElseThrow();
            // half a thousandth of the web, and half a unit of the sheet that a line may miss
            assertThat(near.web()).isCloseTo(web, within(0.02 * firing.web().value()));
            assertThat(pressure).isCloseTo(at(firing.traceHistory(), near.time()), within(0.1));
        }
        over.get(1).sendKeys(Keys.ARROW_LEFT);
        assertThat(browser.texts("[document.querySelector('figure.course[data-webs] svg svg path').getAttribute('d')]"))
                .containsExactly(first);
        assertThat(browser.console()).isEmpty();
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

    private static void press(WebElement heading, String by) {
        WebElement button = heading.findElement(By.cssSelector("button.sort"));
        if (by.equals("mouse")) {
            button.click();
        } else {
            button.sendKeys(Keys.ENTER);
        }
    }

    private static List<String> firstColumn(WebElement table) {
        return table.findElements(By.cssSelector("tbody tr > :first-child")).stream()
                .map(cell -> cell.getText().replace("\u2296", "").strip())
                .toList();
    }
}
