package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.regime.Regimes;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.ScenarioReader;
import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Campaigns of one law whose sensor hardly has any noise: what the reduction itself leaves is all that could look like a
 * change of regime, and none may be found.
 */
class CleanCampaignStudy {

    private static final int CAMPAIGNS = 30;
    private static final int FIRINGS = 10;
    private static final double LOW = 0.9e6;
    private static final double HIGH = 7e6;
    private static final double DENSITY = 1790;
    private static final double VELOCITY = 887;

    @TempDir
    private Path folder;

    @Test
    void noRegimeChangeIsFoundWhereOnlyTheReductionsOwnBiasIsLeft() throws IOException {
        List<Long> imagined = new ArrayList<>();
        double[] exponentError = new double[CAMPAIGNS];
        double[] scatter = new double[CAMPAIGNS];
        int disagreeing = 0;
        for (int c = 0; c < CAMPAIGNS; c++) {
            SplittableRandom random = new SplittableRandom(9_000 + c);
            double exponent = random.nextDouble(0.15, 0.65);
            FormulationResult result = characterized(scenario(c, exponent, random), c);
            Regimes regimes = result.regimes().orElseThrow();
            if (regimes.evidence().sequentialAnswer() > 1 || regimes.unsettled().isPresent()) {
                imagined.add((long) c);
            }
            disagreeing += result.pooling()
                            .flatMap(Pooling::pooled)
                            .filter(pooled -> !pooled.findings().isEmpty())
                            .isPresent()
                    ? 1
                    : 0;
            exponentError[c] = result.fit().fitted().orElseThrow().law().exponent() - exponent;
            scatter[c] = StrictMath.sqrt(result.fit().fitted().orElseThrow().residuals().stream()
                    .mapToDouble(residual -> residual.lnResidual() * residual.lnResidual())
                    .average()
                    .orElseThrow());
        }
        Arrays.sort(scatter);
        double largest = Arrays.stream(exponentError).map(Math::abs).max().orElseThrow();
        StudyReport.section(
                51,
                "clean-campaigns",
                String.format(
                        Locale.ROOT,
                        """
                        ## The reduction alone makes no regime change

                        %d simulated campaigns of %d firings each, from %.1f to %.0f MPa; one power law each, with an \
                        exponent between 0.15 and 0.65, BATES grains of one to four segments, no scatter from firing to \
                        firing, and a sensor with noise of 0.02 %% of the highest pressure. What is left is the smooth \
                        bias of the reduction: points are off their law by %.3f %% (median of the campaigns; at most %.3f \
                        %%), exponents off the truth by at most %.4f. Campaigns in which a change of regime, or a point of \
                        another regime, was found: **%d of %d**; in which the exponents along the burns and between \
                        firings were said to disagree: **%d**. Target: none.
                        """,
                        CAMPAIGNS,
                        FIRINGS,
                        LOW / 1e6,
                        HIGH / 1e6,
                        100 * scatter[CAMPAIGNS / 2],
                        100 * scatter[CAMPAIGNS - 1],
                        largest,
                        imagined.size(),
                        CAMPAIGNS,
                        disagreeing));
        assertThat(imagined)
                .as("campaigns with a change of regime that is none")
                .isEmpty();
        assertThat(disagreeing).isZero();
    }

    private FormulationResult characterized(String scenario, int number) throws IOException {
        Path file = folder.resolve("scenario-" + number + ".yaml");
        Files.writeString(file, scenario);
        Path campaign = folder.resolve("campaign-" + number);
        MadeCampaign.of(ScenarioReader.read(file).orElseThrow()).writeTo(campaign);
        Campaign read = CampaignReader.read(campaign).orElseThrow();
        CampaignResult result = Characterizer.characterize(read, 1, Progress.silent());
        assertThat(result.formulations()).hasSize(1);
        return result.formulations().get(0);
    }

    private static String scenario(int number, double exponent, SplittableRandom random) {
        double coefficient = random.nextDouble(3e-3, 7e-3);
        int segments = random.nextInt(1, 5);
        double outer = random.nextDouble(30e-3, 55e-3);
        double core = outer * random.nextDouble(0.3, 0.45);
        double length = (3 * outer + core) / 2 * random.nextDouble(0.95, 1.1);
        double web = (outer - core) / 2;
        double surface = segments
                * (Math.PI * (core + web) * (length - web)
                        + Math.PI / 2 * (outer * outer - (core + web) * (core + web)));
        StringBuilder firings = new StringBuilder();
        for (int i = 0; i < FIRINGS; i++) {
            double target = LOW * Math.pow(HIGH / LOW, i / (FIRINGS - 1.0));
            double made = surface * DENSITY * coefficient * Math.pow(target / 1e6, exponent);
            double throat = Math.sqrt(4 / Math.PI * made * VELOCITY / target);
            firings.append(String.format(
                    Locale.ROOT, "  F-%02d: {formulation: only, throat: %.3f mm}%n", i + 1, 1e3 * throat));
        }
        return String.format(
                Locale.ROOT,
                """
                format: burnlaw-scenario/1
                title: One clean law (invented)
                prepared_by: Invented Propulsion Club
                seed: %d
                ambient_pressure: 98.6 kPa absolute
                reference_temperature: 21 degC
                formulations:
                  only:
                    title: One law
                    density: 1.79 g/cm3
                    characteristic_velocity: 887 m/s
                    specific_heat_ratio: 1.134
                    baseline: true
                    law:
                      main: {rate: %.5f mm/s, at: 1 MPa, exponent: %.5f}
                grain:
                  kind: bates
                  segments: %d
                  outer_diameter: %.3f mm
                  core_diameter: %.3f mm
                  segment_length: %.3f mm
                logger:
                  sample_interval: 2 ms
                  quiet_before: 0.3 s
                  quiet_after: 0.4 s
                  pressure_unit: MPa
                  pressure_kind: gauge
                  noise: 1.4 kPa
                firings:
                %s""",
                number + 1,
                1e3 * coefficient,
                exponent,
                segments,
                1e3 * outer,
                1e3 * core,
                1e3 * length,
                firings);
    }
}
