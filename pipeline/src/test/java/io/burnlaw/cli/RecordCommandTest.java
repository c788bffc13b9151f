package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordCommandTest {

    private static final Path SAMPLE = Path.of("../sample-runs/difficult-stand/traces/DS-01.csv");

    @TempDir
    private Path folder;

    private StringWriter out;
    private StringWriter err;

    @BeforeEach
    void silence() {
        out = new StringWriter();
        err = new StringWriter();
    }

    private int execute(String... words) {
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(Burnlaw.understood(words));
    }

    private int record(Path file, String... options) {
        List<String> words = new ArrayList<>(List.of(
                "record", file.toString(), "-o", folder.resolve("page.html").toString()));
        words.addAll(List.of(options));
        return execute(words.toArray(String[]::new));
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    /** A plateau of a second between a rise and a fall, with a ripple that stands for noise. */
    private static String rows(String format, double scale) {
        return IntStream.range(0, 2000)
                .mapToObj(i -> {
                    double t = i / 1000.0;
                    double shape = Math.max(0, Math.min(1, Math.min((t - 0.3) / 0.05, (1.5 - t) / 0.1)));
                    return String.format(Locale.ROOT, format, t, scale * (shape + 0.001 * Math.sin(1.7 * i)));
                })
                .collect(Collectors.joining("\n", "", "\n"));
    }

    @Test
    void aRecordIsShownWithItsFiguresAndEvents() throws IOException {
        Path record = file("shot.csv", "time [s],p [bar]\n" + rows("%.3f,%.4f", 40));
        assertThat(record(record)).isZero();
        assertThat(out.toString())
                .contains("2000 in 1.999 s, one each 1 ms")
                .contains("read as gauge")
                .contains("time was taken from the column 'time [s]'");
        String page = Files.readString(folder.resolve("page.html"));
        assertThat(page).contains("B ignition", "E web burnout", "How the file was read", "<svg");
    }

    @Test
    void asDataItIsPrintedAndNoPageIsWritten() throws IOException {
        Path record = file("shot.csv", "time [s],p [bar]\n" + rows("%.3f,%.4f", 40));
        assertThat(execute("record", record.toString(), "--json")).isZero();
        JsonNode data = new JsonMapper().readTree(out.toString());
        assertThat(data.get("read_as").toString()).contains("time was taken from the column 'time [s]'");
        // 40 bar above the standard atmosphere, and its ripple
        assertThat(data.at("/firing/max_pressure/value").asDouble()).isCloseTo(4.101, within(0.01));
        assertThat(data.at("/firing/max_pressure/unit").asText()).isEqualTo("MPa");
        assertThat(Path.of("shot-record.html")).doesNotExist();
        assertThat(record(record, "--json")).isEqualTo(2);
        assertThat(err.toString()).contains("--json writes no page");
    }

    @Test
    void aThrustIsShownAsAThrust() throws IOException {
        assertThat(record(file("load.txt", "t (s)\tload (N)\n" + rows("%.3f\t%.3f", 180))))
                .isZero();
        // a trapezium of 180 N: 1.05 s wide above and 1.2 s below
        assertThat(out.toString()).containsPattern("total impulse +202\\.5 N s");
        assertThat(Files.readString(folder.resolve("page.html"))).contains("thrust, N");
    }

    @Test
    void aRecordThatLeavesSomethingOpenIsAnsweredWithTheOptions() throws IOException {
        Path bare = file("bare.txt", rows("%2$.4f", 40));
        assertThat(record(bare)).isEqualTo(2);
        assertThat(err.toString())
                .contains("each row has one reading and no time")
                .contains("--sampling \"2 kHz\" --pressure \"column 1 [bar]\"");
        assertThat(folder.resolve("page.html")).doesNotExist();
        assertThat(record(bare, "--sampling", "1 kHz", "--pressure", "column 1 [bar]"))
                .isZero();
        assertThat(out.toString()).contains("2000 in 1.999 s");
    }

    @Test
    void withAGrainTheRateIsWorkedOut() {
        assertThat(record(
                        SAMPLE,
                        "--grain=bates",
                        "--segments=2",
                        "--outer-diameter=38 mm",
                        "--core-diameter=14.01 mm",
                        "--segment-length=61.92 mm",
                        "--throat-diameter=8.57 mm",
                        "--propellant-mass=214.9 g",
                        "--density=1.768 g/cm3",
                        "--ambient-pressure=96.2 kPa"))
                .isZero();
        assertThat(out.toString()).containsPattern("rate +5\\.2\\d+ ± .*mm/s at 1\\.4");
    }

    @Test
    void wrongOptionsAreToldAndNothingIsWritten() {
        assertThat(record(SAMPLE, "--outer-diameter=38 mm")).isEqualTo(2);
        assertThat(err.toString()).contains("--outer-diameter needs a grain");
        assertThat(record(SAMPLE, "--sampling=fast")).isEqualTo(2);
        assertThat(err.toString()).contains("neither a sampling rate nor an interval", "fast");
        assertThat(record(SAMPLE, "--grain=bates", "--throat-diameter=8")).isEqualTo(2);
        assertThat(err.toString()).contains("the number has no unit");
        assertThat(record(folder)).isEqualTo(2);
        assertThat(err.toString()).contains("this is a folder");
        assertThat(folder.resolve("page.html")).doesNotExist();
    }

    @Test
    void noFileOfSomebodyElseIsWrittenOver() throws IOException {
        file("page.html", "mine");
        assertThat(record(SAMPLE)).isEqualTo(3);
        assertThat(folder.resolve("page.html")).hasContent("mine");
        Files.delete(folder.resolve("page.html"));
        assertThat(record(SAMPLE)).isZero();
        assertThat(record(SAMPLE)).isZero();
    }

    @Test
    void filesAndFoldersInPlaceOfACommandOrACampaignLeadOn() throws IOException {
        Path record = file("shot.csv", "time [s],p [bar]\n" + rows("%.3f,%.4f", 40));
        assertThat(Burnlaw.understood(record.toString())).startsWith("record");
        assertThat(Burnlaw.understood("check", "x")).startsWith("check");
        assertThat(execute("run", record.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("burnlaw record " + record);
        assertThat(execute("run", file("campaign.zip", "PK").toString())).isEqualTo(2);
        assertThat(err.toString()).contains("packed file: unpack it");
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertThat(execute(empty.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("this folder is empty", "burnlaw new " + empty);
        assertThat(execute("run", folder.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("burnlaw new my-campaign --from " + folder);
        assertThat(execute("chek", folder.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("Did you mean check?");
    }
}
