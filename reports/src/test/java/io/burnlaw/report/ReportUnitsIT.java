package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.html.RecordPage;
import io.burnlaw.report.html.ReportPages;
import io.burnlaw.report.wording.ShownUnits;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The switch of units in a browser. */
class ReportUnitsIT extends OpenedReports {

    private static final String WORDS = """
            (() => {
              const walker = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
              const found = [];
              while (walker.nextNode()) {
                const at = walker.currentNode.parentElement;
                if (!at.closest('.formulas, [translate], code, .live, .across, .up, .readout, td, script'))
                  found.push(walker.currentNode.data);
              }
              return found;
            })()""";

    private static final String CELLS = """
            (() => Array.from(document.querySelectorAll('main .scroll:not(:has([translate])) td.n')).flatMap(cell => {
              const head = cell.closest('table').tHead.rows[0].cells[cell.cellIndex].textContent;
              return Array.from(cell.childNodes).filter(node => node.nodeType === 3).flatMap(node => [head, node.data]);
            }))()""";

    @BeforeAll
    static void writeReports() throws IOException {
        write(SampleDocument.rich(), "rich");
        ReportWriter.write(
                SampleDocument.rich(), work.resolve("psi"), ReportWriter.Options.EVERYTHING.withUnits(ShownUnits.PSI));
        RecordPage record = new RecordPage(
                SampleDocument.rich().firings().get(2),
                List.of("column 2 was taken for the pressure in MPa"),
                List.of(
                        new RecordPage.Fact("highest pressure", "2.24 MPa absolute"),
                        new RecordPage.Fact("web", "8.00 mm")),
                "burnlaw new my-campaign",
                "test");
        try (OutputStream out = Files.newOutputStream(work.resolve("record.html"))) {
            ReportPages.record(record, out);
        }
    }

    @Test
    void theUnitThatARecordWasReadInStaysOnItsPage() {
        browser.open(work.resolve("record.html"), 1200);
        choose("psi");
        String page = browser.driver().findElement(By.cssSelector("main")).getText();
        assertThat(page)
                .contains("column 2 was taken for the pressure in MPa")
                .contains("325 psi absolute")
                .contains("0.3150 in")
                .contains(" psi measured");
        assertThat(browser.console()).isEmpty();
        choose("mpa");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rich/index.html", "rich/firings/OR-03.html", "rich/firings/OS-1.html", "record.html"})
    void allNumbersChangeAsTheProgramWouldWriteThemAndComeBack(String page) throws IOException {
        browser.open(work.resolve(page), 1200);
        choose("mpa");
        List<String> written = browser.texts(WORDS);
        List<String> cells = browser.texts(CELLS);
        String axes = axes();
        assertThat(axes).contains("MPa");
        for (ShownUnits units : ShownUnits.values()) {
            // the law of the sample has no pair of bar
            if (units == ShownUnits.MPA || units == ShownUnits.BAR && page.endsWith("index.html")) {
                continue;
            }
            choose(units.key());
            assertThat(browser.texts(WORDS))
                    .isEqualTo(written.stream().map(units::text).toList());
            assertCells(cells, browser.texts(CELLS), units);
            assertThat(axes()).isNotEqualTo(axes).doesNotContain("MPa").contains(units.key());
            assertThat(browser.texts("Array.from(document.querySelectorAll('main figure svg[aria-label]'))"
                            + ".map(e => e.getAttribute('aria-label')).filter(e => / MPa/.test(e))"))
                    .isEmpty();
        }
        choose("mpa");
        assertThat(browser.texts(WORDS)).isEqualTo(written);
        assertThat(browser.texts(CELLS)).isEqualTo(cells);
        assertThat(axes()).isEqualTo(axes);
        assertThat(browser.console()).isEmpty();
        assertThat(browser.accessibilityViolations()).isEmpty();
    }

    /** The page knows the numbers of sorted cells in full: they may differ in the last place. */
    private static void assertCells(List<String> before, List<String> after, ShownUnits units) {
        assertThat(after).hasSameSizeAs(before);
        for (int i = 0; i < before.size(); i += 2) {
            assertThat(after.get(i)).isEqualTo(units.text(before.get(i)));
            String expected = units.cell(before.get(i), before.get(i + 1));
            String seen = after.get(i + 1);
            assertThat(seen.replaceAll("\\d", "#")).hasSameSizeAs(expected);
            for (int k = 0; k < Math.min(2, expected.length()); k++) {
                assertThat(Math.abs(seen.charAt(k) - expected.charAt(k)))
                        .as("%s for %s of %s, by text alone %s", seen, before.get(i + 1), before.get(i), expected)
                        .isLessThanOrEqualTo(1);
            }
        }
    }

    /** 500 psi are 3.44738 MPa: a point stands beside the label that its value has. */
    @Test
    void aTickStandsWhereItsValueIs() throws IOException {
        browser.open(work.resolve("rich/index.html"), 1200);
        for (String[] each : new String[][] {{"mpa", "4", "4"}, {"psi", "500", "3.44738"}}) {
            choose(each[0]);
            assertThat(browser.number("""
                            (() => {
                              const plot = document.querySelector('article .plot');
                              const [low, high] = plot.dataset.x.split(' ').map(Number);
                              const label = Array.from(plot.querySelectorAll('.across text'))
                                .find(text => text.textContent === '%s');
                              return label.getAttribute('x') - plot.dataset.size.split(' ')[0]
                                * Math.log(%s / low) / Math.log(high / low);
                            })()""".formatted(each[1], each[2])))
                    .as("place of the label %s less that of its value", each[1])
                    .isBetween(-0.02, 0.02);
        }
        choose("mpa");
    }

    @Test
    void aPageOpensInTheUnitsOfTheCommandUntilItsReaderChoosesOthers() throws IOException {
        browser.open(work.resolve("psi/index.html"), 1200);
        browser.driver().executeScript("localStorage.clear()");
        browser.open(work.resolve("psi/index.html"), 1200);
        assertThat(chosen()).isEqualTo("psi");
        assertThat(axes()).contains(", psi").doesNotContain(", MPa");
        browser.open(work.resolve("rich/index.html"), 1200);
        assertThat(chosen()).isEqualTo("mpa");
        browser.open(work.resolve("rich/firings/OR-03.html"), 1200);
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=mpa]"))
                .sendKeys(Keys.ARROW_RIGHT);
        assertThat(chosen()).isEqualTo("bar");
        browser.open(work.resolve("psi/firings/OR-03.html"), 1200);
        assertThat(chosen()).isEqualTo("bar");
        assertThat(axes()).contains(", bar");
        choose("mpa");
    }

    private static String chosen() {
        return browser.driver()
                .findElement(By.cssSelector("input[name=units]:checked"))
                .getDomAttribute("value");
    }

    private static void choose(String units) {
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=" + units + "]"))
                .click();
    }

    private static String axes() {
        return String.join(
                " ",
                browser.texts(
                        "Array.from(document.querySelectorAll('main figure svg .across, main figure svg .up, main figure svg text'))"
                                + ".map(e => e.textContent)"));
    }
}
