package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.LawWithout;
import io.burnlaw.report.document.Law;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The published law without a point is the law of a campaign in which the point is set aside. */
class LawWithoutTest {

    private static final int POINTS = 7;

    @TempDir
    private Path folder;

    @Test
    void aLawWithoutAPointIsThatOfTheOthersAlone() throws IOException {
        Formulation all = run(-1);
        Law full = all.useLaws().get(0);
        assertThat(all.without()).hasSize(POINTS);
        for (int i = 0; i < POINTS; i++) {
            LawWithout without = all.without().get(i);
            Law refitted = run(i).useLaws().get(0);
            assertThat(without.cluster()).isEqualTo("p" + i);
            // 1e-4: the closed form leaves out what is of the order of the scatter, 1 %, squared
            assertThat(without.coefficient() / refitted.coefficient().value()).isCloseTo(1, within(1e-4));
            assertThat(without.exponent()).isCloseTo(refitted.exponent().value(), within(1e-4));
            // half a unit of the seventh digit, of numbers near 0.4
            assertThat(without.exponent() - without.exponentChange())
                    .isCloseTo(full.exponent().value(), within(1e-7));
            double reference = full.referencePressure().value();
            assertThat(1 + without.rateChange())
                    .isCloseTo(
                            without.coefficient()
                                    * Math.pow(reference, without.exponent())
                                    / full.rateAtReference().value(),
                            within(1e-6));
        }
    }

    private Formulation run(int setAside) throws IOException {
        Path campaign = Files.createDirectories(folder.resolve("campaign"));
        Files.writeString(campaign.resolve("campaign.yaml"), """
                format: burnlaw-campaign/1
                title: Invented for a test
                formulations:
                  one: {title: One, density: 1.80 g/cm3}
                trace: {pressure_kind: absolute}
                """);
        SplittableRandom random = new SplittableRandom(20261129);
        StringBuilder rows = new StringBuilder("point,formulation,pressure [MPa],rate [mm/s],use\n");
        for (int i = 0; i < POINTS; i++) {
            double pressure = Math.pow(6, i / (POINTS - 1.0));
            double rate = 5 * Math.pow(pressure, 0.4) * Math.exp(0.01 * random.nextGaussian());
            rows.append(String.format(
                    Locale.ROOT, "p%d,one,%.6f,%.6f,%s%n", i, pressure, rate, i == setAside ? "no: a test" : "yes"));
        }
        Files.writeString(campaign.resolve("points.csv"), rows);
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute("run", campaign.toString(), "--json");
        return ((DocumentReading.Read) DocumentFile.read("run", out.toString().getBytes(StandardCharsets.UTF_8)))
                .document()
                .formulations()
                .get(0);
    }
}
