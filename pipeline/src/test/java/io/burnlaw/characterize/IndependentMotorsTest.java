package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Motors unlike the project's own simulator: records of a model written apart, with much that the log does not say. */
@Oracle(
        value = "records of independent_motors.py: mass balance integrated with NumPy; 4.5 mm/s at 1 MPa, n 0.35, and"
                + " 1.7 mm/s, n 0.45 of slow motors",
        agreement = "the 95 % intervals hold it")
class IndependentMotorsTest {

    @TempDir
    private Path folder;

    private void unpack(String seed) throws IOException {
        try (ZipInputStream archive =
                new ZipInputStream(IndependentMotorsTest.class.getResourceAsStream("independent-motors.zip"))) {
            for (ZipEntry entry = archive.getNextEntry(); entry != null; entry = archive.getNextEntry()) {
                Path file = folder.resolve(entry.getName());
                Files.createDirectories(file.getParent());
                Files.write(file, archive.readAllBytes());
            }
        }
        assertThat(folder.resolve(seed)).isDirectory();
    }

    private FormulationResult sugar(String seed) throws IOException {
        unpack(seed);
        CampaignResult result = Characterizer.characterize(
                CampaignReader.read(folder.resolve(seed)).orElseThrow(), 2, Progress.silent());
        return result.formulations().get(0);
    }

    /** 1.5 % of scatter: of ten points one may miss its own interval, which leaves the scatter out. */
    private static void pointsHold(FormulationResult sugar, double coefficient, double exponent) {
        assertThat(sugar.fitPoints())
                .hasSize(10)
                .filteredOn(point -> {
                    double truth = coefficient * Math.pow(point.pressure() / 1e6, exponent);
                    return Math.abs(point.rate() / truth - 1) < 2 * Math.hypot(point.rateStd() / truth, 0.015);
                })
                .hasSizeGreaterThanOrEqualTo(9);
    }

    @Test
    void slowMotorsBehindAStrongIgniterHoldTheirRate() throws IOException {
        FormulationResult sugar = sugar("3");
        pointsHold(sugar, 1.7e-3, 0.45);
        Interval.Estimated rate =
                (Interval.Estimated) sugar.laws().orElseThrow().laws().get(0).interval(0.12e6, 0.95);
        double truth = 1.7e-3 * Math.pow(0.12, 0.45);
        assertThat(rate.low()).isBetween(0.96 * truth, truth);
        assertThat(rate.high()).isBetween(truth, 1.04 * truth);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1", "2"})
    void theLawHoldsTheTruth(String seed) throws IOException {
        FormulationResult sugar = sugar(seed);
        PiecewiseLaw laws = sugar.laws().orElseThrow();
        assertThat(laws.laws()).hasSize(1);
        RateLaw law = laws.laws().get(0);
        Interval.Estimated exponent = (Interval.Estimated) law.exponentInterval(0.95);
        assertThat(exponent.low()).isBetween(0.30, 0.35);
        assertThat(exponent.high()).isBetween(0.35, 0.40);
        for (double pressure : new double[] {0.5e6, 1e6, 1.6e6}) {
            double truth = 4.5e-3 * Math.pow(pressure / 1e6, 0.35);
            Interval.Estimated rate = (Interval.Estimated) law.interval(pressure, 0.95);
            assertThat(rate.low()).isLessThan(truth);
            assertThat(rate.high()).isGreaterThan(truth).isLessThan(1.05 * truth);
        }
        pointsHold(sugar, 4.5e-3, 0.35);
    }
}
