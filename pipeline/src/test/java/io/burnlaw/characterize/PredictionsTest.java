package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult.Predictions;
import io.burnlaw.planning.Plan;
import io.burnlaw.prediction.PredictionCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a law foretells where little is known: a sentence takes the place of a number. */
class PredictionsTest {

    private static final Path SAMPLE_RUNS = Path.of("..", "sample-runs");

    @TempDir
    private Path folder;

    private static Predictions outlook(Path campaign) {
        CampaignResult result =
                Characterizer.characterize(CampaignReader.read(campaign).orElseThrow(), 2, Progress.silent());
        assertThat(result.outlooks()).hasSize(1);
        return result.outlooks().get(0);
    }

    /** The sugar sample with some rows of its log, and other lines in its description. */
    private Path sugar(int rows, UnaryOperator<String> log, UnaryOperator<String> description) throws IOException {
        Path sample = SAMPLE_RUNS.resolve("new-sugar-source");
        Files.createDirectory(folder.resolve("traces"));
        List<String> lines = Files.readAllLines(sample.resolve("firings.csv")).subList(0, rows + 1);
        for (String row : lines.subList(1, lines.size())) {
            String trace = row.split(",")[2];
            Files.copy(sample.resolve(trace), folder.resolve(trace));
        }
        Files.writeString(folder.resolve("firings.csv"), log.apply(String.join("\n", lines) + "\n"));
        Files.writeString(
                folder.resolve("campaign.yaml"), description.apply(Files.readString(sample.resolve("campaign.yaml"))));
        return folder;
    }

    @Test
    void threeFiringsArePredictedAndPlannedForWithWideIntervals() throws IOException {
        Predictions outlook = outlook(sugar(3, log -> log, text -> text));
        PredictionCheck.Predicted closure = (PredictionCheck.Predicted) outlook.closure();
        assertThat(closure.firings()).hasSize(3);
        Plan.Planned plan = (Plan.Planned) outlook.plan();
        assertThat(plan.ladder()).allSatisfy(each -> {
            assertThat(each.allowed()).isTrue();
            assertThat(each.maxPressure().high()).isLessThan(1.001 * plan.allowedPressure());
        });
        assertThat(outlook.basis().orElseThrow().grain()).contains("bates, 2 segments", "as in NS-03");
    }

    /** A wrong mass leaves the rate of its firing alone; it must leave the others' c* and density alone as well. */
    @Test
    void aMassInAnotherUnitSpoilsNoPrediction() throws IOException {
        Predictions outlook = outlook(sugar(6, log -> log.replaceFirst("217.0 ± 0.1", "0.217 ± 0.001"), text -> text));
        PredictionCheck.Predicted closure = (PredictionCheck.Predicted) outlook.closure();
        assertThat(closure.good()).isTrue();
        // 217 mg in 100 cm3 is no propellant: the firing is rejected, and nowhere in the check
        assertThat(closure.firings()).noneMatch(each -> each.measured().id().equals("NS-05"));
        double velocity = outlook.basis().orElseThrow().motor().gas().characteristicVelocity();
        // what the five others give: 883 m/s; truth.yaml says 887 m/s, and the log's masses carry their own errors
        assertThat(velocity).isBetween(870.0, 900.0);
        // of the propellant 1788 kg/m3, weighed grains within a per cent of it
        assertThat(outlook.basis().orElseThrow().motor().density()).isBetween(1770.0, 1806.0);
    }

    @Test
    void whereMostAreToldAgainstWhatWasStatedIsInDoubt() throws IOException {
        Predictions outlook = outlook(sugar(5, log -> log, text -> text.replace("905 m/s", "780 m/s")));
        assertThat(((PredictionCheck.Predicted) outlook.closure()).firings()).hasSize(5);
        assertThat(outlook.basis().orElseThrow().motor().gas().characteristicVelocity())
                .isBetween(870.0, 900.0);
    }

    @Test
    void withoutALawNothingIsForetold() throws IOException {
        Predictions outlook = outlook(sugar(2, log -> log, text -> text));
        assertThat(outlook.closure().sentence()).contains("there is no law");
        assertThat(outlook.plan().sentence()).contains("No throat is named: there is no law");
        assertThat(outlook.basis()).isEmpty();
    }

    @Test
    void withoutMassDensityAndVelocityNobodyKnowsTheGas() throws IOException {
        Predictions outlook = outlook(sugar(
                3,
                log -> log.replaceAll("propellant_mass \\[g\\]", "note")
                        .replaceAll("[0-9.]+ ± 0.1,200", "not weighed,200"),
                text -> text.replaceAll("(?m)^    (density|characteristic_velocity):.*\n", "")));
        assertThat(outlook.closure().sentence()).contains("Weigh the grains");
        assertThat(outlook.plan().sentence()).contains("Weigh the grain");
    }

    @Test
    void withoutALimitOfTheCaseNothingAboveWhatWasFiredIsNamed() throws IOException {
        Predictions outlook =
                outlook(sugar(4, log -> log, text -> text.replaceAll("(?m)^hardware:\n  .*\n  .*\n", "")));
        Plan.Planned plan = (Plan.Planned) outlook.plan();
        assertThat(plan.allowedBecause()).contains("no limit of the case is stated");
        assertThat(plan.cautions()).anySatisfy(each -> assertThat(each).contains("No limit of the case is stated"));
    }

    @Test
    void pointsOfStrandsForetellNoMotor() {
        Predictions outlook = outlook(SAMPLE_RUNS.resolve("strand-set"));
        assertThat(outlook.closure().sentence()).contains("the points come from no motor");
        assertThat(outlook.plan().sentence()).contains("no motor of this propellant was fired");
    }

    @Test
    void motorsOfBothRegimesArePredictedEachInItsOwn() {
        Predictions outlook = outlook(SAMPLE_RUNS.resolve("slow-regime"));
        PredictionCheck.Predicted closure = (PredictionCheck.Predicted) outlook.closure();
        assertThat(closure.good()).isTrue();
        assertThat(closure.firings())
                .hasSizeGreaterThan(9)
                .allSatisfy(
                        each -> assertThat(Math.abs(each.meanPressureError())).isLessThan(0.1));
        assertThat(closure.notPredicted())
                .anySatisfy(each -> assertThat(each).contains("SR-12", "burned at a low pressure first"));
        Plan.Planned plan = (Plan.Planned) outlook.plan();
        double slow = outlook.basis().orElseThrow().slowBelow().orElseThrow();
        assertThat(plan.ladder())
                .allSatisfy(each -> assertThat(each.meanPressure().low()).isGreaterThan(slow));
    }
}
