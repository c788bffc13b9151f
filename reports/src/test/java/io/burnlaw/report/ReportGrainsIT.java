package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.GrainTable;
import io.burnlaw.report.document.Plan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A grain that somebody types on the page: what it shows is what the planner predicted for that grain. */
class ReportGrainsIT extends OpenedReports {

    private static final Path FOLDER = Path.of("src/test/resources/typed-grains");

    /** Types grains into the page and gives what it shows of each: mean, highest, burn time, as text and in full. */
    private static final String TYPE = """
            const fields = Array.from(document.querySelectorAll('.explorer details input'));
            const out = document.querySelectorAll('.explorer details dd');
            const set = (field, value) => { field.value = value; field.dispatchEvent(new Event('input')); };
            return arguments[0].map(typed => {
              typed.forEach((value, i) => set(fields[i], value));
              return Array.from(out).slice(0, 3).flatMap(each => [each.textContent, each.dataset.value]);
            });""";

    private static Plan plan;

    @BeforeAll
    static void writeReports() throws IOException {
        var document = DocumentFile.read(FOLDER.resolve("burnlaw.json")).match(read -> read.document(), refused -> {
            throw new AssertionError(refused.text());
        });
        plan = document.plans().get(0);
        write(document, "typed");
    }

    @BeforeEach
    void open() throws IOException {
        browser.open(file("typed/index.html"), 1200);
    }

    @Test
    void aThousandTypedGrainsAreThoseOfThePlanner() throws IOException {
        List<double[]> planned = Files.readAllLines(FOLDER.resolve("planned.csv")).stream()
                .skip(1)
                .map(line -> Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        List<?> shown = (List<?>) browser.driver()
                .executeScript(
                        TYPE,
                        planned.stream().map(each -> Arrays.copyOf(each, 5)).toList());
        GrainTable table = plan.grainTable();
        int seen = 0;
        for (int i = 0; i < planned.size(); i++) {
            double[] answer = planned.get(i);
            List<?> texts = (List<?>) shown.get(i);
            double[] mean = numbers(texts.get(0));
            double[] max = numbers(texts.get(2));
            near(numbers(texts.get(1))[0], answer[5], table.agreesWithin(), answer);
            near(numbers(texts.get(3))[0], answer[8], table.agreesWithin(), answer);
            near(numbers(texts.get(5))[0], answer[11], table.agreesWithin(), answer);
            // what the page promises, and half of the last of three digits
            double end = table.endsWithin() + 0.005;
            if (mean.length == 3 && max.length == 3) {
                seen++;
                near(mean[1], answer[6], end, answer);
                near(mean[2], answer[7], end, answer);
                near(max[1], answer[9], end, answer);
                near(max[2], answer[10], end, answer);
            }
        }
        assertThat(planned).hasSize(1000);
        assertThat(seen).as("grains with their intervals").isGreaterThan(950);
        assertThat(browser.console()).isEmpty();
    }

    private static double[] numbers(Object text) {
        return Arrays.stream(text.toString().replaceAll("[^0-9.]+", " ").strip().split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static void near(double shown, double planned, double share, double[] grain) {
        assertThat(Math.abs(shown / planned - 1))
                .as("%s for %s, %s", shown, planned, Arrays.toString(grain))
                .isLessThan(share);
    }

    @Test
    void itBeginsWithTheGrainFiredLastAndSaysWhatIsNotAllowedOrNotKnown() {
        WebElement part = browser.driver().findElement(By.cssSelector(".explorer details"));
        List<WebElement> fields = part.findElements(By.cssSelector("input"));
        WebElement said = part.findElement(By.cssSelector("[role=status]"));
        assertThat(plan.grain())
                .contains("outer diameter " + fields.get(0).getDomProperty("value") + " mm")
                .contains(fields.get(3).getDomProperty("value") + " segments");
        type(fields.get(4), "5");
        assertThat(said.getText()).startsWith("Not to be drilled: ").contains("the case limit");
        type(fields.get(4), "20");
        assertThat(said.getText()).startsWith("The throat is too large");
        assertThat(part.findElement(By.cssSelector("dd")).getText()).isEqualTo("\u2013");
        type(fields.get(4), "8");
        assertThat(said.getText()).isEmpty();
        for (String[] wrong : new String[][] {
            {"1", "40", "Type diameters"},
            {"1", "3", "Core over outer diameter must be"},
            {"3", "1.5", "Type diameters"},
            {"2", "500", "Segment length over the difference"},
            {"0", "400", "The outer diameter in mm must be"}
        }) {
            WebElement field = fields.get(Integer.parseInt(wrong[0]));
            String before = field.getDomProperty("value");
            type(field, wrong[1]);
            assertThat(said.getText()).contains(wrong[2]);
            type(field, before);
            assertThat(said.getText()).isEmpty();
        }
    }

    @Test
    void inOtherUnitsItIsTheSameGrain() {
        WebElement part = browser.driver().findElement(By.cssSelector(".explorer details"));
        double mean = Double.parseDouble(part.findElement(By.cssSelector("dd")).getDomAttribute("data-value"));
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=psi]"))
                .click();
        assertThat(part.findElement(By.cssSelector("input")).getDomProperty("value"))
                .isEqualTo("1.494");
        assertThat(part.findElement(By.cssSelector("dd")).getText())
                .contains(" psi (")
                .startsWith(String.valueOf((int) (mean * 145.0377)));
        browser.driver()
                .findElement(By.cssSelector("input[name=units][value=mpa]"))
                .click();
        assertThat(Double.parseDouble(part.findElement(By.cssSelector("dd")).getDomAttribute("data-value")))
                .isEqualTo(mean);
    }

    @Test
    void thePageHasNoFaultThatAxeFinds() throws IOException {
        assertThat(browser.console()).isEmpty();
        assertThat(browser.requests()).hasSize(1);
        assertThat(browser.accessibilityViolations()).isEmpty();
    }

    private static void type(WebElement field, String value) {
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"), value, Keys.TAB);
    }
}
