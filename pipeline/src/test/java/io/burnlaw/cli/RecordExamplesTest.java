package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.campaign.reading.OneRecord;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.reading.TraceReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One record of twelve samples, and one firing, as loggers and people write them. Each example is read with the right
 * numbers or asked about; docs/records.md is the list of both.
 */
class RecordExamplesTest {

    private static final Path EXAMPLES = Path.of("src/test/resources/records");
    private static final Path PAGE = Path.of("../docs/records.md");

    @TempDir
    private Path folder;

    @Test
    void whatIsReadIsRightAndWhatIsAskedForIsListed() throws IOException {
        StringBuilder page = new StringBuilder("""
                # What is read, and what is asked for

                Each line is an example in `pipeline/src/test/resources/records`, invented and as small as it can be. The page is
                written by a test, which also checks that each example that is read gives the right numbers. All pressures are
                gauge where the example does not say otherwise.

                Tables of LibreOffice (`.ods`) are not supported: a further library would come into the jar for a file that the same
                program saves as `.xlsx` or `.csv`.

                ## Records of loggers

                | example | begins with | stated by the user | what happens |
                | --- | --- | --- | --- |
                """);
        List<Path> records = files("loggers");
        for (Path record : records) {
            row(page, record, said(record), record(record));
        }
        page.append("""

                ## Firing logs

                | example | begins with | stated by the user | what happens |
                | --- | --- | --- | --- |
                """);
        List<Path> logs = files("logs");
        for (Path log : logs) {
            row(page, log, Map.of(), log(log));
        }
        assertThat(records.size() + logs.size()).isGreaterThanOrEqualTo(60);
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.writeString(PAGE, page);
        }
        assertThat(PAGE).hasContent(page.toString());
    }

    private static List<Path> files(String kind) throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLES.resolve(kind))) {
            return files.filter(file -> !file.toString().endsWith(".said"))
                    .sorted()
                    .toList();
        }
    }

    private static Map<String, String> said(Path record) throws IOException {
        Path beside = record.resolveSibling(record.getFileName() + ".said");
        Map<String, String> said = new LinkedHashMap<>();
        if (Files.exists(beside)) {
            for (String line : Files.readAllLines(beside)) {
                said.put(line.substring(0, line.indexOf(':')), line.substring(line.indexOf(':') + 2));
            }
        }
        return said;
    }

    /** Twelve samples each 10 ms, up to 20 bar gauge or 200 N. */
    private static String record(Path record) throws IOException {
        String name = record.getFileName().toString();
        OneRecord.Reading asked = OneRecord.read(record.toAbsolutePath().getParent(), name, said(record));
        assertThat(asked.problems()).as(name).isEmpty();
        TraceSettings settings = asked.settings().pressureKind().isPresent()
                ? asked.settings()
                : asked.settings().of(PressureKind.GAUGE);
        return TraceReader.read(record.toAbsolutePath().getParent(), name, name, settings, asked.ambient())
                .match(
                        read -> {
                            Trace trace = read.trace();
                            assertThat(trace.size()).as(name).isBetween(11, 12);
                            assertThat(trace.time(trace.size() - 1) - trace.time(0))
                                    .as(name)
                                    .isCloseTo(0.11, within(1e-6));
                            double highest = trace.hasPressure()
                                    ? Arrays.stream(trace.pressures()).max().orElseThrow() - asked.ambient()
                                    : 1e4 * Arrays.stream(trace.thrusts()).max().orElseThrow();
                            // the smallest figure written is a part in a thousand
                            assertThat(highest).as(name).isCloseTo(2e6, within(2e3));
                            return read.findings().isEmpty()
                                    ? "read"
                                    : "read; "
                                            + read.findings().get(0).message().replace(" of " + name, "");
                        },
                        unreadable -> "asked for: "
                                + unreadable
                                        .problem()
                                        .map(RecordExamplesTest::shown)
                                        .orElseGet(() ->
                                                unreadable.findings().get(0).message()));
    }

    private String log(Path log) throws IOException {
        Path campaign = Files.createDirectories(folder.resolve(log.getFileName().toString()));
        Files.createDirectories(campaign.resolve("traces"));
        Files.copy(EXAMPLES.resolve("loggers/plain.csv"), campaign.resolve("traces/1.csv"));
        Files.copy(EXAMPLES.resolve("loggers/plain.csv"), campaign.resolve("traces/shot_1.csv"));
        Files.copy(log, campaign.resolve("firings.csv"));
        Files.writeString(campaign.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented
                ambient_pressure: 100 kPa
                formulations: {base: {density: 1.8 g/cm3}}
                trace: {pressure_kind: gauge}
                """);
        return CampaignReader.read(campaign)
                .match(
                        read -> {
                            if (read.firings().isEmpty()) {
                                return shown(
                                        read.unusableRows().get(0).problems().get(0));
                            }
                            Firing firing = read.firings().get(0);
                            assertThat(firing.throatDiameter().value()).isCloseTo(8e-3, within(0.07e-3));
                            assertThat(firing.grain().segments()).isEqualTo(2);
                            assertThat(firing.grain()
                                            .dimensions()
                                            .get("outer_diameter")
                                            .value())
                                    .isCloseTo(40e-3, within(0.2e-3));
                            List<String> notes = new ArrayList<>(read.notes());
                            return "read" + (notes.isEmpty() ? "" : "; " + String.join(" ", notes));
                        },
                        unusable -> "asked for: " + shown(unusable.get(0)));
    }

    private static String shown(Problem problem) {
        return (problem.place().isEmpty() ? "" : problem.place() + ": ") + problem.what() + "; " + problem.mend();
    }

    private static void row(StringBuilder page, Path example, Map<String, String> said, String outcome)
            throws IOException {
        String begin = new String(Files.readAllBytes(example), StandardCharsets.UTF_8)
                .replaceAll("[\\x00\\uFEFF\\uFFFD]", "")
                .lines()
                .filter(line -> !line.isBlank())
                .limit(2)
                .map(line -> line.length() > 60 ? line.substring(0, 60) + "…" : line)
                .map(line -> "`" + line.replace("\t", " ⇥ ") + "`")
                .collect(Collectors.joining("<br>"));
        String packed = example.toString().endsWith(".gz") ? "" : begin;
        String told = said.entrySet().stream()
                .map(entry -> "`" + entry.getKey() + ": " + entry.getValue() + "`")
                .collect(Collectors.joining("<br>"));
        page.append("| ")
                .append(Stream.of(example.getFileName().toString(), packed, told, outcome)
                        .map(cell -> cell.replace("|", "\\|").replace("\n", "<br>"))
                        .collect(Collectors.joining(" | ")))
                .append(" |\n");
    }
}
