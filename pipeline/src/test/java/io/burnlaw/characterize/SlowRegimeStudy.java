package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.FormulationResult.PointResult;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Thresholds.Threshold;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.ScenarioReader;
import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A propellant with a fourfold slow regime on a stand where ignition goes wrong: five motors burn fast, four slow, and of
 * four a part of the surface smoulders for seconds behind a strong igniter before the rest takes fire. That part burns
 * deeper than the rest from then on, which no model of the reduction knows.
 */
class SlowRegimeStudy {

    private static final int CAMPAIGNS = Integer.getInteger("burnlaw.campaigns", 40);
    private static final double SLOW = 1.25;
    private static final double EXPONENT = 0.36;
    private static final double THRESHOLD = 0.6e6;
    private static final double[] FAST_THROATS = {7.8, 9.0, 10.3, 11.6, 12.6};
    private static final double[] SLOW_THROATS = {7.6, 8.6, 9.8, 11};
    private static final double[] LATE_THROATS = {8.2, 9.1, 10.0, 11.1};

    @TempDir
    private Path folder;

    private int twoLaws;
    private int thresholds;
    private int thresholdHeld;
    private int thresholdNear;
    private int slowFirings;
    private int slowTold;
    private int exponents;
    private int exponentsHeld;
    private int late;
    private int lateUsed;
    private int lateHeld;
    private int lateBadBurnTime;
    private int lateBurnTimeHeld;
    private int dwellsUsed;
    private double worstUsed;
    private double worstDwell;
    private double worstIgnition;

    static double rate(double pressure) {
        return 1e-3 * (pressure < THRESHOLD ? SLOW : 4 * SLOW) * StrictMath.pow(pressure / 1e6, EXPONENT);
    }

    static String scenario(int campaign) {
        SplittableRandom random = new SplittableRandom(9_100 + campaign);
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, """
                format: burnlaw-scenario/1
                title: Slow regime and late ignition, invented
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
                      slow: {rate: 1.25 mm/s, at: 1 MPa, exponent: 0.36}
                      fast: {from: 0.6 MPa, rate: 5 mm/s, at: 1 MPa, exponent: 0.36}
                grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                instruments: {caliper: 0.02 mm, scale: 0.2 g, density: 0.01 g/cm3, core_offset: 0.1 mm}
                logger: {sample_interval: 4 ms, noise: 3 kPa, gain_error: 0.3 %%, sensor_class: 0.5 %% of 7 MPa, longest: 90 s}
                firings:
                """, campaign));
        for (int i = 0; i < FAST_THROATS.length; i++) {
            text.append(String.format(
                    Locale.ROOT, "  F%d: {formulation: p, throat: %.2f mm, igniter: 30}%n", i, FAST_THROATS[i]));
        }
        for (int i = 0; i < SLOW_THROATS.length; i++) {
            text.append(String.format(Locale.ROOT, "  S%d: {formulation: p, throat: %.2f mm}%n", i, SLOW_THROATS[i]));
        }
        for (int i = 0; i < LATE_THROATS.length; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  L%d: {formulation: p, throat: %.2f mm, igniter: %.1f, faults: {late_rise: %.2f s, late_rise_share: %.3f}}%n",
                    i,
                    LATE_THROATS[i],
                    6 + 10 * random.nextDouble(),
                    1 + 5 * random.nextDouble(),
                    0.02 + 0.55 * random.nextDouble()));
        }
        return text.toString();
    }

    static Map<String, Double> truth(String yaml, String id) {
        Map<String, Double> values = new HashMap<>();
        boolean inside = false;
        for (String line : yaml.split("\n")) {
            if (line.matches("  \\S.*:.*") || line.matches("\\S.*")) {
                inside = line.trim().startsWith(id + ":");
            }
            if (inside) {
                Matcher found = Pattern.compile("(\\w+): ([-0-9.e]+)").matcher(line);
                while (found.find()) {
                    values.put(found.group(1), Double.parseDouble(found.group(2)));
                }
            }
        }
        return values;
    }

    @Test
    void smoulderingFiringsNeitherHideNorBendTheRegimes() throws IOException {
        for (int c = 0; c < CAMPAIGNS; c++) {
            campaign(c);
        }
        String section = String.format(
                Locale.ROOT,
                """
                ## A slow regime, and ignition that goes wrong

                %d simulated campaigns of a propellant that burns at a quarter of the rate below 0.6 MPa: five motors burn fast, \
                four slow for their whole burn, and of four a part of the surface (2 to 57 %%) smoulders for 1 to 6 s behind \
                an igniter's pulse, until a second pulse lights the rest. The part stays ahead of the rest, so that the web is \
                uneven in a way that the reduction does not model. Rates are compared with the law times the firing's own \
                factor.

                | | |
                | --- | --- |
                | campaigns with two laws | **%.0f %%** |
                | threshold within 15 %% | **%.0f %%** |
                | its interval holds the truth | **%.0f %%** |
                | exponents whose 95 %% interval holds | **%.1f %%** of %d |
                | firings that burned wholly slow and are reported so | **%.1f %%** of %d |
                | late firings that gave a used rate | %d of %d |
                | their 95 %% intervals hold | **%.1f %%** |
                | their largest error of the rate | %+.1f %% |
                | their burn times off by more than 3 %% | **%d** |
                | the 95 %% intervals of the burn times hold | **%.1f %%** |
                | largest error of the ignition, all late firings reduced | %.3f s |
                | rates before the rise that were used | %d, largest error %+.1f %% |

                Targets: two laws and a threshold within 15 %% in nine campaigns of ten, intervals of the threshold and of the late rates and burn times in 93 %%, every slow firing \
                reported. Burn times are compared with the burnout of the mean web. \
                Where they are far off, a part burned through early and the rest fell into the slow regime: it burned on for one to three seconds at some 10 kPa gauge; `uneven-web` reports this and the burn \
                time's uncertainty includes it.
                """,
                CAMPAIGNS,
                100.0 * twoLaws / CAMPAIGNS,
                100.0 * thresholdNear / CAMPAIGNS,
                100.0 * thresholdHeld / Math.max(1, thresholds),
                100.0 * exponentsHeld / Math.max(1, exponents),
                exponents,
                100.0 * slowTold / Math.max(1, slowFirings),
                slowFirings,
                lateUsed,
                late,
                100.0 * lateHeld / Math.max(1, lateUsed),
                100 * worstUsed,
                lateBadBurnTime,
                100.0 * lateBurnTimeHeld / Math.max(1, lateUsed),
                worstIgnition,
                dwellsUsed,
                100 * worstDwell);
        StudyReport.section(54, "slow-regime", section);
        assertThat(twoLaws).as("campaigns with two laws").isGreaterThanOrEqualTo((int) (0.9 * CAMPAIGNS));
        assertThat(thresholdNear).as("thresholds within 15 %").isGreaterThanOrEqualTo((int) (0.9 * CAMPAIGNS));
        assertThat(thresholdHeld).as("thresholds held").isGreaterThanOrEqualTo((int) (0.93 * thresholds));
        assertThat(slowTold).as("slow firings told").isGreaterThanOrEqualTo((int) (0.99 * slowFirings));
        // 3 of 94 measured: the rest burned on in the slow regime, at 10 kPa over the ambient pressure
        assertThat(lateBadBurnTime).as("burn times off by more than 3 %").isLessThanOrEqualTo((int) (0.05 * lateUsed));
        assertThat(lateBurnTimeHeld).as("burn times held").isGreaterThanOrEqualTo((int) (0.93 * lateUsed));
        assertThat(lateHeld).as("rates of late firings held").isGreaterThanOrEqualTo((int) (0.93 * lateUsed));
    }

    private void campaign(int c) throws IOException {
        Path made = Files.createDirectories(folder.resolve("c" + c));
        Path file = made.resolve("scenario.yaml");
        Files.writeString(file, scenario(c));
        MadeCampaign.of(ScenarioReader.read(file).orElseThrow()).writeTo(made.resolve("campaign"));
        String truth = Files.readString(made.resolve("campaign").resolve("truth.yaml"));
        Campaign read = CampaignReader.read(made.resolve("campaign")).orElseThrow();
        CampaignResult result = Characterizer.characterize(read, 2, Progress.silent());
        FormulationResult formulation = result.formulations().get(0);
        System.out.println(
                "SEL " + c + " " + formulation.regimes().map(f -> f.selected()).orElse(0));
        twoLaws += formulation.regimes().filter(found -> found.selected() == 2).isPresent() ? 1 : 0;
        formulation.threshold().ifPresent(this::count);
        formulation
                .regimes()
                .filter(found -> found.selected() == 2)
                .ifPresent(found -> found.regimes().forEach(this::count));
        Map<String, PointResult> points = new HashMap<>();
        formulation.points().forEach(point -> points.put(point.point().id(), point));
        for (FiringResult firing : result.firings()) {
            if (firing.id().startsWith("S") && firing.reduction() instanceof Reduction.Reduced reduced) {
                slowFirings++;
                slowTold +=
                        reduced.findings().stream().anyMatch(each -> each.code() == FindingCode.SLOW_BURNING) ? 1 : 0;
            }
            if (firing.id().startsWith("L")) {
                late++;
                if (firing.reduction() instanceof Reduction.Reduced reduced) {
                    late(reduced, truth(truth, firing.id()), points);
                }
            }
        }
    }

    private void count(Threshold threshold) {
        thresholds++;
        thresholdNear += Math.abs(threshold.pressure() / THRESHOLD - 1) <= 0.15 ? 1 : 0;
        thresholdHeld += threshold
                        .interval()
                        .estimated()
                        .filter(found -> found.low() <= THRESHOLD && THRESHOLD <= found.high())
                        .isPresent()
                ? 1
                : 0;
    }

    private void count(Regime regime) {
        exponents++;
        Interval.Estimated exponent = regime.exponentInterval().estimated().orElseThrow();
        exponentsHeld += exponent.low() <= EXPONENT && EXPONENT <= exponent.high() ? 1 : 0;
    }

    private void late(Reduction.Reduced reduced, Map<String, Double> truth, Map<String, PointResult> points) {
        double rise = 0.3 + truth.get("late_rise") / 1e3;
        double ignition = reduced.events().ignition() - rise;
        worstIgnition = Math.abs(ignition) > Math.abs(worstIgnition) ? ignition : worstIgnition;
        for (RatePoint point : reduced.points()) {
            PointResult asUsed = points.get(point.id());
            if (!asUsed.used()) {
                continue;
            }
            double pressure = asUsed.pressure();
            double error = point.rate() / (rate(pressure) * truth.get("rate_factor")) - 1;
            if (point.source() == RatePoint.Source.DWELL) {
                dwellsUsed++;
                worstDwell = Math.abs(error) > Math.abs(worstDwell) ? error : worstDwell;
                continue;
            }
            lateUsed++;
            lateHeld += Math.abs(error) <= 1.96 * point.rateStd() / point.rate() ? 1 : 0;
            worstUsed = Math.abs(error) > Math.abs(worstUsed) ? error : worstUsed;
            double burned = truth.get("burnout") + 0.3 - rise;
            double off = reduced.events().burnTime() - burned;
            lateBurnTimeHeld += Math.abs(off) <= 1.96 * reduced.events().burnTimeStd() ? 1 : 0;
            lateBadBurnTime += Math.abs(off) > 0.03 * burned ? 1 : 0;
        }
    }
}
