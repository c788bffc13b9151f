package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/consume.md tells other tools to do is done here, word for word. */
class ConsumersIT {

    @TempDir
    private Path folder;

    private double[] expected;

    @BeforeEach
    void makeAReport() throws Exception {
        RunnableJar.run(
                folder,
                "run",
                RunnableJar.SAMPLE_RUNS.resolve("new-sugar-source").toString(),
                "-o",
                "report");
        JsonNode law = new ObjectMapper()
                .readTree(folder.resolve("report/burnlaw.json").toFile())
                .at("/formulations/0/single_law");
        expected = new double[] {
            law.at("/coefficient/value").asDouble(),
            law.at("/exponent/value").asDouble(),
            law.at("/pressure_low/value").asDouble(),
            law.at("/pressure_high/value").asDouble()
        };
    }

    @Test
    void pythonReadsThePage() throws Exception {
        assertReads(List.of("python3", block("python", "read.py"), "report/index.html"));
    }

    @Test
    void javaScriptReadsThePage() throws Exception {
        assertReads(List.of("node", block("javascript", "read.js"), "report/index.html"));
    }

    @Test
    void jqReadsTheCoefficients() throws Exception {
        assumeTrue(onPath("jq"), "jq is not installed");
        assertReads(List.of("sh", "-c", "cd report && " + script("sh").strip()));
    }

    @Test
    void rReadsTheTable() throws Exception {
        assumeTrue(onPath("Rscript"), "R is not installed");
        assertReads(List.of("Rscript", block("r", "read.R"), "report/laws.csv"));
    }

    private static boolean onPath(String program) {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    @Test
    void javaReadsTheDocument() throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        assertReads(
                List.of(java, "-cp", RunnableJar.JAR.toString(), block("java", "ReadLaw.java"), "report/burnlaw.json"));
    }

    @Test
    void aSpreadsheetFindsTheLawInItsTable() throws Exception {
        List<String> lines = Files.readAllLines(folder.resolve("report/laws.csv"));
        assertThat(lines.get(0)).contains("coefficient", "exponent");
        List<String> headings = Arrays.asList(lines.get(0).split(","));
        String[] cells = lines.get(1).split(",");
        int exponent = headings.indexOf("exponent");
        assertThat(Double.parseDouble(cells[exponent])).isEqualTo(expected[1]);
    }

    private void assertReads(List<String> command) throws Exception {
        RunnableJar.Outcome outcome = RunnableJar.execute(folder, command);
        assertThat(outcome.exitCode()).as(outcome.err()).isZero();
        double[] printed = Arrays.stream(outcome.out().strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        assertThat(printed).containsExactly(expected);
    }

    private String block(String language, String file) throws Exception {
        Files.writeString(folder.resolve(file), script(language));
        return file;
    }

    private static String script(String language) throws Exception {
        Matcher matcher = Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL)
                .matcher(Files.readString(RunnableJar.DOCS.resolve("consume.md")));
        assertThat(matcher.find()).as("a block of " + language).isTrue();
        return matcher.group(1);
    }
}
