package io.burnlaw.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.Progress;
import io.burnlaw.grain.Bates;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.PlannedThroat;
import io.burnlaw.planning.Planner;
import io.burnlaw.quantity.Measured;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.GrainTable;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A thousand grains as the planner predicts them, with the document of their campaign: what somebody types on its page is
 * held against them in a browser. Written anew by {@code -Dburnlaw.update=true}.
 */
class TypedGrainsTest {

    private static final Path FOLDER = Path.of("../reports/src/test/resources/typed-grains");
    private static final Path DOCUMENT = FOLDER.resolve("burnlaw.json");
    private static final Path ANSWERS = FOLDER.resolve("planned.csv");
    private static final String HEADING =
            "outer,core,length,segments,throat,mean,mean_low,mean_high,max,max_low,max_high,burn_time";

    private static Characterization document;
    private static PlanBasis basis;

    @BeforeAll
    static void characterize() throws IOException {
        CampaignResult result = CampaignReader.read(Path.of("../sample-runs/new-sugar-source"))
                .match(read -> Characterizer.characterize(read, 2, Progress.silent()), unusable -> {
                    throw new AssertionError(unusable);
                });
        document = CharacterizationDocument.result(result, "test", Optional.empty(), false)
                .forPage("0".repeat(64));
        basis = result.outlooks().get(0).basis().orElseThrow();
        if (Boolean.getBoolean("burnlaw.update")) {
            Files.createDirectories(FOLDER);
            StringWriter text = new StringWriter();
            DocumentFile.writeShort(document, text);
            Files.writeString(DOCUMENT, text + "\n");
            Files.writeString(ANSWERS, HEADING + "\n" + String.join("\n", answers()) + "\n");
        }
    }

    private static GrainTable table() {
        return document.plans().get(0).grainTable();
    }

    /** Seeded, all over the table, in millimetres, MPa and seconds. */
    private static List<String> answers() {
        SplittableRandom random = new SplittableRandom(20261202);
        GrainTable table = table();
        List<String> lines = new ArrayList<>();
        while (lines.size() < 1000) {
            double outer = between(random, table.smallestOuter(), table.largestOuter());
            double core =
                    outer * random.nextDouble(table.core().get(0), table.core().get(4));
            double length = (outer - core)
                    * random.nextDouble(table.length().get(0), table.length().get(4));
            int segments = random.nextInt(1, 7);
            Bates grain = grain(outer, core, length, segments);
            double most = 0;
            for (int i = 0; i <= 1000; i++) {
                most = Math.max(most, grain.surface(grain.burnout() * (1 - 1e-12) * i / 1000));
            }
            double ratio = between(
                    random,
                    table.surfaceOverThroat().get(0),
                    table.surfaceOverThroat().get(2));
            String line = String.format(
                    Locale.ROOT,
                    "%.3f,%.3f,%.3f,%d,%.4f",
                    outer,
                    core,
                    length,
                    segments,
                    2000 * Math.sqrt(most / ratio / Math.PI));
            double[] planned = planned(line);
            if (planned[6] >= table.shortestBurn()) {
                lines.add(line + ","
                        + String.join(
                                ",",
                                Arrays.stream(planned)
                                        .mapToObj(each -> String.format(Locale.ROOT, "%.5f", each))
                                        .toList()));
            }
        }
        return lines;
    }

    private static double between(SplittableRandom random, double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    private static Bates grain(double outer, double core, double length, int segments) {
        return new Bates(segments, Measured.of(outer / 1000), Measured.of(core / 1000), Measured.of(length / 1000));
    }

    private static double[] planned(String line) {
        double[] typed =
                Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray();
        Bates grain = grain(typed[0], typed[1], typed[2], (int) typed[3]);
        Motor motor = new Motor(
                grain,
                basis.motor().density(),
                basis.motor().gas(),
                new Nozzle(typed[4] / 1000),
                Motor.freeVolume(grain, Double.NaN),
                basis.motor().ambientPressure());
        PlannedThroat throat = Planner.throat(basis.withMotor(motor, "typed"), PlanOptions.defaults(), typed[4] / 1000)
                .match(found -> found.throat(), none -> null);
        return new double[] {
            throat.meanPressure().value() / 1e6,
            throat.meanPressure().low() / 1e6,
            throat.meanPressure().high() / 1e6,
            throat.maxPressure().value() / 1e6,
            throat.maxPressure().low() / 1e6,
            throat.maxPressure().high() / 1e6,
            throat.burnTime().orElseThrow()
        };
    }

    @Test
    void theDocumentOfTheBrowsersTestHasTheTableOfToday() {
        Characterization kept = DocumentFile.read(DOCUMENT).match(read -> read.document(), unusable -> {
            throw new AssertionError(unusable.text());
        });
        assertThat(kept.plans().get(0).grainTable()).isEqualTo(table());
    }

    @Test
    void theAnswersOfTheBrowsersTestAreThoseOfToday() throws IOException {
        List<String> kept = Files.readAllLines(ANSWERS);
        assertThat(kept).hasSize(1001).first().isEqualTo(HEADING);
        for (int i = 1; i < kept.size(); i += 20) {
            double[] now = planned(kept.get(i));
            String[] cells = kept.get(i).split(",");
            for (int k = 0; k < now.length; k++) {
                // five decimals were kept
                assertThat(Double.parseDouble(cells[5 + k])).as(kept.get(i)).isCloseTo(now[k], within(2e-5));
            }
        }
    }
}
