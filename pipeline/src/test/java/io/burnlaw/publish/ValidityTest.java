package io.burnlaw.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.characterize.Progress;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.report.document.Formulation.NotEstimated;
import io.burnlaw.report.document.Formulation.ValidRange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ValidityTest {

    @TempDir
    private Path folder;

    /** Points on 4 mm/s at 1 MPa with n = 0.5, each off by a fraction of a percent, at temperatures that go round. */
    private FormulationResult measured(int points, double... celsius) throws IOException {
        Files.writeString(folder.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented points
                ambient_pressure: 0.1 MPa absolute
                formulations:
                  a: {title: Invented, density: 1.79 g/cm3, baseline: true}
                """);
        StringBuilder table = new StringBuilder("point,formulation,pressure [MPa],pressure_kind,rate [mm/s]"
                + (celsius.length > 0 ? ",temperature [degC]" : "") + "\n");
        for (int i = 0; i < points; i++) {
            double pressure = Math.pow(10, i / (points - 1.0));
            double rate = 4 * Math.sqrt(pressure) * (1 + 0.003 * (i % 3 - 1));
            table.append(String.format(Locale.ROOT, "P%d,a,%.5f,absolute,%.5f", i, pressure, rate));
            if (celsius.length > 0) {
                table.append(String.format(Locale.ROOT, ",%.1f", celsius[i % celsius.length]));
            }
            table.append('\n');
        }
        Files.writeString(folder.resolve("points.csv"), table);
        Campaign read = CampaignReader.read(folder).orElseThrow();
        CampaignResult result = Characterizer.characterize(read, 1, Progress.silent());
        return result.formulations().get(0);
    }

    @Test
    void theRangeIsThatOfThePointsAndSaysWhatReachesBeyond() throws IOException {
        ValidRange range = Validity.range(measured(8)).orElseThrow();
        // the rounding of a change of unit
        assertThat(range.pressureLow().value()).isCloseTo(1, within(1e-12));
        assertThat(range.pressureHigh().value()).isCloseTo(10, within(1e-11));
        assertThat(range.warning()).contains("1.00 to 10.0 MPa").contains("extrapolation");
        // without a limit of the case no pressure beyond the points is published: 5 times would need 25 MPa
        assertThat(range.beyond()).isEmpty();
        assertThat(measured(8).faster())
                .filteredOn(answer -> answer.factor() >= 5)
                .hasSize(3)
                .allMatch(answer -> answer.pressure().isEmpty());
    }

    @Test
    void threePointsHaveNoBootstrapAndSayWhy() throws IOException {
        assertThat(Validity.notEstimated(measured(3)))
                .extracting(NotEstimated::what)
                .containsExactly("intervals by the bootstrap");
        assertThat(Validity.notEstimated(measured(3)).get(0).reason()).contains("independent firings");
    }

    @Test
    void oneTemperatureGivesNoSensitivityAndNamesTheFiringThatWould() throws IOException {
        NotEstimated missing = Validity.notEstimated(measured(6, 20, 21)).get(0);
        assertThat(missing.what()).isEqualTo("temperature sensitivity");
        assertThat(missing.reason()).contains("within 1.0 K");
        assertThat(missing.mend()).contains("20 K");
    }

    @Test
    void twoTemperaturesLeaveNothingOpen() throws IOException {
        assertThat(Validity.notEstimated(measured(8, 10, 35, 35))).isEmpty();
    }

    @Test
    void aLawThatBendsIsNotSaidToBreak() throws IOException {
        StringBuilder table = new StringBuilder("point,formulation,pressure [MPa],pressure_kind,rate [mm/s]\n");
        for (int i = 0; i < 12; i++) {
            double x = i / 11.0 * Math.log(10);
            // a quadratic in ln P, off by up to 0.4 % to and fro
            double rate = 3 * Math.exp(0.6 * x - 0.08 * x * x + 0.004 * Math.cos(2.6 * i));
            table.append(String.format(Locale.ROOT, "P%d,a,%.5f,absolute,%.5f%n", i, Math.exp(x), rate));
        }
        measured(3);
        Files.writeString(folder.resolve("points.csv"), table);
        Campaign read = CampaignReader.read(folder).orElseThrow();
        FormulationResult result = Characterizer.characterize(read, 1, Progress.silent())
                .formulations()
                .get(0);
        assertThat(result.regimes().orElseThrow().claim()).isIn(Claim.BEND, Claim.SMOOTH_CURVE);
        assertThat(Verdict.of(result, 0.95)).contains("smoothly");
    }

    @Test
    void withoutALawThereIsNoRange() throws IOException {
        assertThat(Validity.range(measured(2))).isEmpty();
    }
}
