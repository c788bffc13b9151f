package io.burnlaw.publish;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.characterize.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VerdictTest {

    @TempDir
    private Path folder;

    /** Forty points from 0.2 to 8 MPa, each off a law by a fraction of a percent. */
    private FormulationResult measured(DoubleUnaryOperator law) throws IOException {
        Files.writeString(folder.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented points
                ambient_pressure: 0.1 MPa absolute
                formulations:
                  a: {title: Invented, density: 1.79 g/cm3, baseline: true}
                """);
        StringBuilder table = new StringBuilder("point,formulation,pressure [MPa],pressure_kind,rate [mm/s]\n");
        for (int i = 0; i < 40; i++) {
            double pressure = 0.2 * Math.pow(40, i / 39.0);
            table.append(String.format(
                    Locale.ROOT,
                    "P%d,a,%.5f,absolute,%.5f%n",
                    i,
                    pressure,
                    law.applyAsDouble(pressure) * (1 + 0.003 * (i * 7 % 5 - 2))));
        }
        Files.writeString(folder.resolve("points.csv"), table);
        Campaign read = CampaignReader.read(folder).orElseThrow();
        return Characterizer.characterize(read, 1, Progress.silent())
                .formulations()
                .get(0);
    }

    @Test
    void oneLawNeedsNoCaution() throws IOException {
        assertThat(Verdict.caution(measured(pressure -> 4 * Math.pow(pressure, 0.4))))
                .isEmpty();
    }

    @Test
    void theCautionOfTwoLawsNamesWhereTheyMeetAndRepeatsNone() throws IOException {
        FormulationResult bent = measured(
                pressure -> 4 * Math.pow(pressure, pressure < 2 ? 0.7 : 0.2) * Math.pow(2, pressure < 2 ? 0 : 0.5));
        String caution = Verdict.caution(bent).orElseThrow();
        assertThat(caution).startsWith("The law changes at ").doesNotContain("P^");
        // the two meet at 2 MPa
        assertThat(caution).containsPattern("(1\\.9\\d|2\\.0\\d)\u00a0MPa");
        assertThat(Verdict.of(bent, 0.95)).contains("P^");
    }

    @Test
    void theCautionOfASlowRegimeIsThePressureToStayAbove() throws IOException {
        FormulationResult slow =
                measured(pressure -> (pressure < 1 ? 1.5 : 4) * Math.pow(pressure, pressure < 1 ? 0.5 : 0.3));
        assertThat(Verdict.caution(slow).orElseThrow())
                .matches("(?s)Stay above 1\\.\\d+\u00a0MPa: below, it may burn 2\\.\\d times slower\\..*")
                .doesNotContain("P^");
    }
}
