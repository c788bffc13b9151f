package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Thresholds.Threshold;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.ScenarioReader;
import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Motors that were timed and pulsed bound the threshold of a slow regime. Which motor does not come up by itself is the
 * simulator's answer: of three timed motors of a campaign, those that stay below the threshold for their whole burn are
 * logged as pulsed, at any throat between one that hardly keeps them down and one that does for certain.
 */
class PulsedFiringsStudy {

    private static final int CAMPAIGNS = Integer.getInteger("burnlaw.campaigns", 50);

    @TempDir
    private Path folder;

    private int thresholds;
    private int heldWithout;
    private int heldWith;
    private int narrowed;
    private int pulsed;
    private double narrowest = 1;
    private double sumOfLogs;

    private static String scenario(int campaign, double slow, double threshold) {
        SplittableRandom random = new SplittableRandom(77_000 + campaign);
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, """
                format: burnlaw-scenario/1
                title: Pulses, invented
                seed: %d
                ambient_pressure: 101 kPa absolute
                formulations:
                  p:
                    title: Invented
                    density: 1.79 g/cm3
                    characteristic_velocity: 890 m/s
                    expected_characteristic_velocity: 900 m/s
                    specific_heat_ratio: 1.13
                    rate_scatter: 1 %%
                    velocity_scatter: 0.5 %%
                    law:
                      slow: {rate: %.4f mm/s, at: 1 MPa, exponent: 0.36}
                      fast: {from: %.4f MPa, rate: 5 mm/s, at: 1 MPa, exponent: 0.36}
                grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                instruments: {caliper: 0.02 mm, scale: 0.2 g, density: 0.01 g/cm3, core_offset: 0.1 mm}
                logger: {sample_interval: 4 ms, noise: 3 kPa, gain_error: 0.3 %%, sensor_class: 0.5 %% of 7 MPa, longest: 120 s}
                firings:
                """, campaign, 1e3 * slow, threshold / 1e6));
        double[] fast = {7.6, 8.4, 9.2, 10.0};
        for (int i = 0; i < fast.length; i++) {
            text.append(
                    String.format(Locale.ROOT, "  F%d: {formulation: p, throat: %.2f mm, igniter: 30}%n", i, fast[i]));
        }
        // the throat at which the slow law just reaches the threshold with the first surface of the grain
        double just = 1e3
                * Math.sqrt(
                        4 / Math.PI * 0.014778 * 1790 * 890 * slow * StrictMath.pow(threshold / 1e6, 0.36) / threshold);
        for (int i = 0; i < 4; i++) {
            text.append(String.format(
                    Locale.ROOT, "  S%d: {formulation: p, throat: %.2f mm}%n", i, just * (1.35 + 0.12 * i)));
        }
        for (int i = 0; i < 3; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  P%d: {formulation: p, throat: %.2f mm, timed: 2 %%, note: pulsed}%n",
                    i,
                    just * (1.02 + 0.2 * random.nextDouble())));
        }
        return text.toString();
    }

    @Test
    void pulsesBoundTheThreshold() throws IOException {
        for (int c = 0; c < CAMPAIGNS; c++) {
            campaign(c);
        }
        StudyReport.section(
                55,
                "pulsed-firings",
                String.format(
                        Locale.ROOT,
                        """
                        ## Firings that pulsed

                        %d simulated campaigns of propellants that burn at 1/2.2 to 1/4 of the rate below a threshold between 0.5 and \
                        0.9 MPa: four recorded motors burn fast, four slow, and %d that were timed stay below the threshold for \
                        their whole burn and are logged as pulsed.

                        | | |
                        | --- | --- |
                        | campaigns with a threshold | %d |
                        | its interval holds the truth, without the pulsed firings | %d |
                        | with them | **%d** |
                        | intervals that they narrow | **%d** |
                        | width of these against before, geometric mean | **%.0f %%** (narrowest %.0f %%) |

                        Target: because of them, at most one in forty of the narrowed intervals loses the truth.
                        """,
                        CAMPAIGNS,
                        pulsed,
                        thresholds,
                        heldWithout,
                        heldWith,
                        narrowed,
                        100 * StrictMath.exp(sumOfLogs / Math.max(1, narrowed)),
                        100 * narrowest));
        assertThat(thresholds).isGreaterThan(CAMPAIGNS / 2);
        assertThat(narrowed).isGreaterThan(thresholds / 8);
        assertThat(heldWithout - heldWith).isLessThanOrEqualTo(1 + narrowed / 40);
    }

    private void campaign(int c) throws IOException {
        SplittableRandom random = new SplittableRandom(88_000 + c);
        double threshold = 1e6 * (0.5 + 0.4 * random.nextDouble());
        double slow = 5e-3 / (2.2 + 1.8 * random.nextDouble());
        String all = scenario(c, slow, threshold);
        Path made = Files.createDirectories(folder.resolve("c" + c));
        String truth = Files.readString(make(all, made.resolve("all")).resolve("truth.yaml"));
        String kept = all;
        String none = all;
        for (int i = 0; i < 3; i++) {
            String row = "(?m)^  P" + i + ":.*\\R";
            none = none.replaceAll(row, "");
            if (SlowRegimeStudy.truth(truth, "P" + i).get("maximum_pressure") >= threshold / 1e6) {
                kept = kept.replaceAll(row, "");
            } else {
                pulsed++;
            }
        }
        Optional<Interval.Estimated> before = interval(make(none, made.resolve("none")));
        Optional<Interval.Estimated> after = interval(make(kept, made.resolve("kept")));
        if (before.isEmpty() || after.isEmpty()) {
            return;
        }
        thresholds++;
        heldWithout += holds(before.get(), threshold);
        heldWith += holds(after.get(), threshold);
        double width = width(after.get()) / width(before.get());
        if (width < 0.999) {
            narrowed++;
            sumOfLogs += StrictMath.log(width);
            narrowest = Math.min(narrowest, width);
        }
    }

    private static Path make(String scenario, Path folder) throws IOException {
        Path file = Files.createDirectories(folder).resolve("scenario.yaml");
        Files.writeString(file, scenario);
        MadeCampaign.of(ScenarioReader.read(file).orElseThrow()).writeTo(folder.resolve("campaign"));
        return folder.resolve("campaign");
    }

    private static Optional<Interval.Estimated> interval(Path campaign) {
        Campaign read = CampaignReader.read(campaign).orElseThrow();
        return Characterizer.characterize(read, 2, Progress.silent())
                .formulations()
                .get(0)
                .threshold()
                .map(Threshold::interval)
                .flatMap(Interval::estimated);
    }

    private static int holds(Interval.Estimated interval, double truth) {
        return interval.low() <= truth && truth <= interval.high() ? 1 : 0;
    }

    private static double width(Interval.Estimated interval) {
        return StrictMath.log(interval.high() / interval.low());
    }
}
