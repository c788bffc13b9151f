package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.burnlaw.Oracle;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/consume.md tells other tools to do is done here, word for word, on a report with two laws to design with. */
class ConsumersIT {

    /** Half of the last digits of a double that may differ between two implementations of a power. */
    private static final double ROUNDING = 1e-14;

    @TempDir
    private static Path folder;

    private static JsonNode laws;

    @BeforeAll
    static void makeAReport() throws Exception {
        RunnableJar.run(
                folder, "run", RunnableJar.SAMPLE_RUNS.resolve("slow-regime").toString(), "-o", "report");
        laws = new ObjectMapper()
                .readTree(folder.resolve("report/burnlaw.json").toFile())
                .at("/formulations/0/use_laws");
        assertThat(laws).hasSize(2);
    }

    @Test
    void python() throws Exception {
        assertRates(List.of("python3", block("python", "rate.py"), "report/index.html"));
    }

    @Test
    void javaScript() throws Exception {
        assertRates(List.of("node", block("javascript", "rate.js"), "report/index.html"));
    }

    @Test
    void jq() throws Exception {
        assertRates(List.of("sh", block("sh", "rate.sh"), "report/burnlaw.json"), "jq");
    }

    @Test
    void r() throws Exception {
        assertRates(List.of("Rscript", block("r", "rate.R"), "report/laws.csv"));
    }

    @Test
    void java() throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        assertRates(
                List.of(java, "-cp", RunnableJar.JAR.toString(), block("java", "Rate.java"), "report/burnlaw.json"),
                java);
    }

    @Test
    void spreadsheet() throws Exception {
        assertFormula(0, 1, 1);
        // 1 MPa and 1 mm/s; exact by definition of inch and pound-force
        assertFormula(1, 1e6 / 6894.757293168361, 1 / 25.4);
    }

    /** docs/design.md on the same report: its motor burns above the threshold of the slow regime. */
    @Test
    @Oracle(
            value = "Conservation of mass, and the steady pressure P = (density a Kn c*)^(1/(1-n)) where dP/dt = 0"
                    + " (Sutton and Biblarz, Rocket Propulsion Elements, chapter 12)",
            agreement = "0.3 % and 0.7 %",
            fromMemory = true)
    void designExample() throws Exception {
        assumeOnPath("python3");
        assumeTrue(
                RunnableJar.execute(folder, List.of("python3", "-c", "import scipy"))
                                .exitCode()
                        == 0,
                "SciPy is not installed");
        String script = scripts("design.md", "python").get(0);
        assertThat(script.lines().count()).isLessThanOrEqualTo(100);
        RunnableJar.Outcome outcome = pressureCurve(script);
        assertThat(outcome.exitCode()).as(outcome.err()).isZero();
        assertThat(outcome.err()).doesNotContain("warning").contains("peak", "proof test");
        double throat = Math.PI / 4 * Math.pow(constant(script, "THROAT"), 2);
        double grain = Math.PI
                / 4
                * (Math.pow(constant(script, "OUTSIDE"), 2) - Math.pow(constant(script, "CORE"), 2))
                * constant(script, "LENGTH");
        JsonNode propellant = new ObjectMapper()
                .readTree(folder.resolve("report/coefficients.json").toFile())
                .at("/formulations/0");
        double density = 1000 * propellant.get("density_gram_per_cm3").asDouble();
        double velocity =
                propellant.get("characteristic_velocity_metre_per_second").asDouble();
        List<double[]> rows = outcome.out()
                .lines()
                .skip(1)
                .map(line -> Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        double impulse = 0;
        double[] peak = rows.get(0);
        for (int i = 1; i < rows.size(); i++) {
            impulse += (rows.get(i)[0] - rows.get(i - 1)[0]) * 1e6 * (rows.get(i)[1] + rows.get(i - 1)[1]) / 2;
            peak = rows.get(i)[1] > peak[1] ? rows.get(i) : peak;
        }
        // 0.3 %: gas of the igniter before and gas left after are 0.05 % each, the trapezia of 5 ms 0.1 %
        assertThat(impulse * throat / velocity).isCloseTo(density * grain, withinPercentage(0.3));
        JsonNode law = propellant.at("/laws/1/metre_per_second_pascal");
        double steady = Math.pow(
                density * law.get("a").asDouble() * peak[3] * velocity,
                1 / (1 - law.get("n").asDouble()));
        // 0.7 %: the gas that fills the place of the propellant is 0.4 % of it at this pressure, and 1/(1-n) is 1.4
        assertThat(peak[1] * 1e6).isCloseTo(steady, withinPercentage(0.7));
        assertThat(pressureCurve(script.replaceFirst("(?m)^THROAT = [0-9.]+", "THROAT = 0.0040"))
                        .err())
                .contains("warning: outside of what was measured", "do not fire this motor");
        assertThat(pressureCurve(script.replaceFirst("(?m)^THROAT = [0-9.]+", "THROAT = 0.0200")))
                .matches(other -> other.exitCode() == 1 && other.out().isEmpty(), "gives no curve")
                .extracting(RunnableJar.Outcome::err)
                .asString()
                .contains("warning: the pressure falls before the web is burned");
    }

    private static RunnableJar.Outcome pressureCurve(String script) throws Exception {
        Files.writeString(folder.resolve("pressure_curve.py"), script);
        return RunnableJar.execute(folder, List.of("python3", "pressure_curve.py", "report/coefficients.json"));
    }

    private static double constant(String script, String name) {
        Matcher names = Pattern.compile("(?m)^([A-Z_, ]*\\b" + name + "\\b[A-Z_, ]*) = ([0-9., ]+)")
                .matcher(script);
        assertThat(names.find()).as(name).isTrue();
        int place = Arrays.asList(names.group(1).split(", ")).indexOf(name);
        return Double.parseDouble(names.group(2).strip().split(", ")[place]);
    }

    private void assertFormula(int which, double pressureFactor, double rateFactor) throws Exception {
        assumeOnPath("ssconvert");
        String id = Files.readAllLines(folder.resolve("report/laws.csv")).get(1).split(",")[0];
        for (double pressure : new double[] {inside(0), inside(1), outside()}) {
            List<String> lines = new ArrayList<>(Files.readAllLines(folder.resolve("report/laws.csv")));
            String formula = scripts("consume.md", "text").get(which).strip();
            for (int i = 0; i < 3; i++) {
                String cell = List.of(id, pressure * pressureFactor + "", '"' + formula.replace("\"", "\"\"") + '"')
                        .get(i);
                // AD is empty, AE a label, AF the cell
                lines.set(i, lines.get(i) + ",,," + cell);
            }
            Files.write(folder.resolve("sheet.csv"), lines);
            RunnableJar.execute(folder, List.of("ssconvert", "sheet.csv", "answer.csv"));
            try (CsvReader<CsvRecord> rows = CsvReader.builder().ofCsvRecord(folder.resolve("answer.csv"))) {
                String answer = rows.stream().skip(2).findFirst().orElseThrow().getField(31);
                if (pressure == outside()) {
                    assertThat(answer).contains("warning: outside");
                } else {
                    assertThat(Double.parseDouble(answer) / rateFactor)
                            .isCloseTo(expected(pressure), within(1e-12 * expected(pressure)));
                }
            }
        }
    }

    private static void assertRates(List<String> command) throws Exception {
        assertRates(command, command.get(0));
    }

    private static void assertRates(List<String> command, String program) throws Exception {
        assumeOnPath(program);
        for (double pressure : new double[] {inside(0), inside(1)}) {
            RunnableJar.Outcome outcome = at(pressure, command);
            assertThat(outcome.exitCode()).as(outcome.err()).isZero();
            assertThat(Double.parseDouble(outcome.out().strip()))
                    .isCloseTo(expected(pressure), within(ROUNDING * expected(pressure)));
        }
        RunnableJar.Outcome outcome = at(outside(), command);
        assertThat(outcome.exitCode()).isNotZero();
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).contains("warning: " + outside() + " MPa is outside of what was measured");
    }

    private static RunnableJar.Outcome at(double pressure, List<String> command) throws Exception {
        List<String> words = new ArrayList<>(command);
        words.add(Double.toString(pressure));
        return RunnableJar.execute(folder, words);
    }

    /** A pressure for which there is one law only. */
    private static double inside(int law) {
        return (low(law) + high(law)) / 2;
    }

    private static double outside() {
        return Math.ceil(high(1)) + 0.5;
    }

    private static double expected(double pressure) {
        int law = pressure < high(0) ? 0 : 1;
        return laws.get(law).at("/coefficient/value").asDouble()
                * StrictMath.pow(pressure, laws.get(law).at("/exponent/value").asDouble());
    }

    private static double low(int law) {
        return laws.get(law).at("/pressure_low/value").asDouble();
    }

    private static double high(int law) {
        return laws.get(law).at("/pressure_high/value").asDouble();
    }

    private static void assumeOnPath(String program) {
        assumeTrue(
                Path.of(program).isAbsolute()
                        || Arrays.stream(
                                        System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                                .anyMatch(each -> Files.isExecutable(Path.of(each, program))),
                program + " is not installed");
    }

    private static String block(String language, String file) throws IOException {
        Files.writeString(folder.resolve(file), scripts("consume.md", language).get(0));
        return file;
    }

    private static List<String> scripts(String document, String language) throws IOException {
        Matcher matcher = Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL)
                .matcher(Files.readString(RunnableJar.DOCS.resolve(document)));
        List<String> all = matcher.results().map(each -> each.group(1)).toList();
        assertThat(all).as("blocks of " + language).isNotEmpty();
        return all;
    }
}
