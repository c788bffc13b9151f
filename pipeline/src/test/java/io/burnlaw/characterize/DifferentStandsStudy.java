package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.FormulationResult.PointResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Stands that differ from the model: ten motors of one law each, with one phenomenon that the reduction does not know. What
 * a phenomenon does is in {@code simulation}, apart from the chamber model.
 */
class DifferentStandsStudy {

    private static final int CAMPAIGNS = Integer.getInteger("burnlaw.campaigns", 20);
    private static final String ONLY = System.getProperty("burnlaw.only", "");
    private static final double RATE = 5.0;
    private static final double EXPONENT = 0.36;
    private static final double VELOCITY = 890;

    /** Throats [mm], and the highest pressures that they give, roughly [MPa]. */
    private static final double[] THROATS = {14.4, 13.1, 12.2, 11.2, 10.4, 9.8, 9.1, 8.6, 8.2, 7.8};

    private static final double[] PEAKS = {0.65, 0.88, 1.1, 1.45, 1.8, 2.2, 2.8, 3.3, 3.9, 4.5};

    @TempDir
    private Path folder;

    /**
     * One row.
     *
     * @param words       for the table
     * @param logger      its keys beside the usual ones
     * @param instruments their keys beside the usual ones
     * @param firing      further keys of a firing, by its highest pressure [MPa]
     * @param largest     error of a rate that may be left in nine of ten firings [1]
     */
    private record Phenomenon(
            String words, String logger, String instruments, DoubleFunction<String> firing, double largest) {

        static Phenomenon of(String words, String logger, DoubleFunction<String> firing, double largest) {
            return new Phenomenon(words, logger, "", firing, largest);
        }
    }

    private static final String PLAIN = "noise: 3 kPa, quiet_after: 1 s";

    private static List<Phenomenon> phenomena() {
        List<Phenomenon> all = new ArrayList<>();
        all.add(Phenomenon.of("nothing", PLAIN, peak -> "", 0.01));
        for (double after : new double[] {3, 15, 30}) {
            for (double[] warm : new double[][] {{0.01, 8}, {0.03, 20}, {-0.02, 3}, {-0.02, 10}, {0.02, 3}}) {
                all.add(Phenomenon.of(
                        String.format(
                                Locale.ROOT,
                                "sensor warmed by %+.0f %% of the peak, back in %.0f s, %.0f s recorded after",
                                100 * warm[0],
                                warm[1],
                                after),
                        String.format(Locale.ROOT, "noise: 3 kPa, quiet_after: %.0f s", after),
                        peak -> String.format(
                                Locale.ROOT,
                                ", faults: {warmed: %.2f kPa, warmed_return: %.1f s}",
                                1e3 * warm[0] * peak,
                                warm[1]),
                        0.01));
            }
        }
        all.add(Phenomenon.of(
                "steps of 10 kPa at a noise of 0.3 kPa", "noise: 0.3 kPa, resolution: 10 kPa", p -> "", 0.005));
        all.add(Phenomenon.of("a sensor that lags by 20 ms", PLAIN, p -> ", faults: {lag: 20 ms}", 0.01));
        all.add(Phenomenon.of(
                "a flame that spreads in 0.2 s, hardly an igniter",
                PLAIN,
                peak -> ", igniter_mass: 0.2 g, igniter_time: 0.05 s, flame_spread: 0.2 s",
                0.02));
        // The grain weighs some 374 g; 60 % of the charge becomes gas, give or take a tenth of it.
        for (double share : new double[] {0, 0.01, 0.02, 0.04}) {
            for (boolean logged : new boolean[] {false, true}) {
                if (share > 0) {
                    all.add(Phenomenon.of(
                            String.format(
                                    Locale.ROOT,
                                    "igniter gas of %.0f %% of the propellant, %s",
                                    100 * share,
                                    logged ? "its mass in the log" : "not in the log"),
                            PLAIN,
                            peak -> String.format(
                                    Locale.ROOT,
                                    ", igniter_mass: %.2f g, igniter_time: 0.15 s, flame_spread: 0.2 s, igniter_logged: %s",
                                    374 * share / 0.6,
                                    logged),
                            // an unstated igniter beyond 2.8 % is more than its share of the budget, as the finding
                            // says
                            logged ? 0.012 : share > 0.02 ? 0.06 : share > 0.01 ? 0.03 : 0.02));
                }
            }
        }
        String thrust = "sensors: thrust, thrust_noise: 0.5 N, thrust_efficiency: 0.95";
        DoubleFunction<String> exit = p -> ", exit: 19 mm";
        all.add(Phenomenon.of("thrust alone, exit diameter in the log", thrust, exit, 0.02));
        all.add(new Phenomenon(
                "thrust alone, no exit diameter in the log", thrust, ", not_logged: exit_diameter", exit, 0.1));
        all.add(Phenomenon.of(
                "thrust alone, load cell in steps of 0.5 N at a noise of 0.1 N",
                "sensors: thrust, thrust_noise: 0.1 N, thrust_resolution: 0.5 N, thrust_efficiency: 0.95",
                exit,
                0.02));
        for (int[] stand : new int[][] {{20, 80}, {20, 10}, {8, 10}}) {
            all.add(Phenomenon.of(
                    "thrust alone, stand swings at " + stand[0] + " Hz, " + stand[1] + " samples a second",
                    thrust + ", stand_period: " + 1000 / stand[0] + " ms, stand_damping: 5 %, sample_interval: 2.5 ms",
                    p -> ", exit: 19 mm, faults: {coarse_sampling: " + 400 / stand[1] + "}",
                    // some 20 samples in a burn: 5 % measured
                    stand[1] < 80 ? 0.06 : 0.03));
        }
        for (boolean byThrust : new boolean[] {false, true}) {
            SplittableRandom random = new SplittableRandom(77);
            all.add(new Phenomenon(
                    "a club's campaign by " + (byThrust ? "thrust" : "pressure")
                            + ": igniter 1 %, calipers to 0.1 mm, throats that grow by 0 to 2 %, drift of 0 to 1 %, grains ± 8 K,"
                            + " steps of 10 kPa",
                    byThrust
                            ? "sensors: thrust, thrust_noise: 0.5 N, thrust_efficiency: 0.93"
                            : "noise: 1 kPa, resolution: 10 kPa, gain_error: 0.3 %, zero_offset: 3 kPa",
                    ", caliper_step: 0.1 mm, not_logged: 'throat_diameter_after, grain_temperature'",
                    peak -> String.format(
                            Locale.ROOT,
                            ", igniter_mass: 6.2 g, igniter_time: 0.15 s, flame_spread: 0.15 s, temperature: %.1f degC%s%s",
                            20 + random.nextDouble(-8, 8),
                            byThrust
                                    ? ", exit: 19 mm"
                                    : String.format(
                                            Locale.ROOT,
                                            ", faults: {drift: %.2f kPa}",
                                            10 * peak * random.nextDouble()),
                            GROWING),
                    0.06));
        }
        return all;
    }

    /** Stands in a firing's keys for a throat that grows by up to 2 %. */
    private static final String GROWING = ", throat_after: GROWN";

    @Test
    void ratesAndLawsHold() throws IOException {
        StringBuilder rows = new StringBuilder();
        List<String> failed = new ArrayList<>();
        for (Phenomenon each : phenomena()) {
            if (!each.words.contains(ONLY)) {
                continue;
            }
            double[] errors = new double[CAMPAIGNS * THROATS.length];
            double sum = 0;
            int points = 0;
            int held = 0;
            int rateHeld = 0;
            int exponentHeld = 0;
            int coefficientHeld = 0;
            int velocityHeld = 0;
            Map<FindingCode, Integer> findings = new EnumMap<>(FindingCode.class);
            for (int c = 0; c < CAMPAIGNS; c++) {
                CampaignResult result =
                        MadeStand.characterized(Files.createTempDirectory(folder, "c"), scenario(each, c));
                FormulationResult formulation = result.formulations().get(0);
                for (PointResult point : formulation.points()) {
                    if (point.point().source() != RatePoint.Source.FIRING || !point.used()) {
                        continue;
                    }
                    double truth = truth(point.pressure());
                    double error = point.rate() / truth - 1;
                    double std = Math.hypot(
                            point.point().rateStd() / point.rate(),
                            EXPONENT * point.point().pressureStd() / point.pressure());
                    sum += error;
                    errors[points++] = Math.abs(error);
                    held += Math.abs(error) <= 2 * std ? 1 : 0;
                }
                for (FiringResult firing : result.firings()) {
                    firing.reduction().findings().stream()
                            .map(Finding::code)
                            .distinct()
                            .forEach(code -> findings.merge(code, 1, Integer::sum));
                }
                Measured velocity = formulation.characteristicVelocity().orElse(Measured.of(0, 0));
                velocityHeld += Math.abs(velocity.value() - VELOCITY) <= 2 * velocity.stdOr(0) ? 1 : 0;
                RateLaw law = formulation.fit().fitted().map(f -> f.law()).orElse(null);
                if (law != null) {
                    Interval.Estimated rate = law.interval(law.referencePressure(), 0.95)
                            .estimated()
                            .orElseThrow();
                    double truth = truth(law.referencePressure());
                    rateHeld += rate.low() <= truth && truth <= rate.high() ? 1 : 0;
                    Interval.Estimated exponent =
                            law.exponentInterval(0.95).estimated().orElseThrow();
                    Interval.Estimated coefficient =
                            law.interval(1e6, 0.95).estimated().orElseThrow();
                    coefficientHeld += coefficient.low() <= truth(1e6) && truth(1e6) <= coefficient.high() ? 1 : 0;
                    exponentHeld += exponent.low() <= EXPONENT && EXPONENT <= exponent.high() ? 1 : 0;
                }
            }
            double[] sorted = Arrays.copyOf(errors, points);
            Arrays.sort(sorted);
            double nine = points == 0 ? 1 : sorted[Math.min(points - 1, points * 9 / 10)];
            String row = String.format(
                    Locale.ROOT,
                    "| %s | %d of %d | %+.2f %% | %.2f %% | %.2f %% | %.2f %% | %.0f %% | %.0f %% | %.0f %% | %.0f %% | %.0f %% | %s |%n",
                    each.words,
                    points,
                    CAMPAIGNS * THROATS.length,
                    100 * sum / Math.max(1, points),
                    points == 0 ? 0 : 100 * sorted[points / 2],
                    100 * nine,
                    points == 0 ? 0 : 100 * sorted[points - 1],
                    points == 0 ? 0 : 100.0 * held / points,
                    100.0 * rateHeld / CAMPAIGNS,
                    100.0 * coefficientHeld / CAMPAIGNS,
                    100.0 * exponentHeld / CAMPAIGNS,
                    100.0 * velocityHeld / CAMPAIGNS,
                    findings.entrySet().stream()
                            .map(e -> e.getKey().code() + " " + e.getValue())
                            .collect(Collectors.joining(", ")));
            rows.append(row);
            System.out.print(row);
            if (nine > each.largest) {
                failed.add(row);
            }
        }
        StudyReport.section(54, "different-stands", String.format(Locale.ROOT, """
                        ## Stands that differ from the model

                        %d simulated campaigns a row, ten motors each, r = %.1f · P^%.2f (mm/s, MPa) without scatter from firing to \
                        firing, so that each error is the reduction's own. Points: firings that gave one. Errors: of the \
                        rate against the law at the point's pressure: mean, and of their sizes median, nine of ten, largest. Point held: the law within two \
                        standard uncertainties. Held: the 95 %% intervals of the rate at the reference, of a (the rate at 1 MPa), of n \
                        and of c*. Findings: in how many of the firings.

                        | phenomenon | points | bias | median | nine of ten | largest | point held | rate held | a held | n held | c* held | findings |
                        | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
                        %s""", CAMPAIGNS, RATE, EXPONENT, rows));
        assertThat(failed).isEmpty();
    }

    private static double truth(double pressure) {
        return RATE * 1e-3 * StrictMath.pow(pressure / 1e6, EXPONENT);
    }

    private static String scenario(Phenomenon phenomenon, int campaign) {
        SplittableRandom random = new SplittableRandom(8_200 + campaign);
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                """
                format: burnlaw-scenario/1
                title: A stand that differs, invented
                seed: %d
                ambient_pressure: 101 kPa absolute
                reference_temperature: 20 degC
                formulations:
                  p:
                    title: Invented
                    density: 1.79 g/cm3
                    characteristic_velocity: %.1f m/s
                    specific_heat_ratio: 1.13
                    rate_change_per_10_kelvin: 2 %%
                    law:
                      all: {rate: %.3f mm/s, at: 1 MPa, exponent: %.3f}
                grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                instruments: {caliper: 0.02 mm, scale: 0.2 g, density: 0.01 g/cm3, core_offset: 0.1 mm%s}
                logger: {%squiet_before: 1 s, longest: 60 s, %s}
                firings:
                """,
                campaign,
                VELOCITY,
                RATE,
                EXPONENT,
                phenomenon.instruments,
                phenomenon.logger.contains("sample_interval") ? "" : "sample_interval: 2 ms, ",
                phenomenon.logger));
        for (int i = 0; i < THROATS.length; i++) {
            double throat = THROATS[i] * (1 + 0.01 * random.nextDouble(-1, 1));
            String grown = String.format(Locale.ROOT, "%.3f mm", throat * (1 + 0.01 * random.nextDouble()));
            text.append(String.format(
                    Locale.ROOT,
                    "  F%02d: {formulation: p, throat: %.3f mm%s}%n",
                    i,
                    throat,
                    phenomenon.firing.apply(PEAKS[i]).replace("GROWN", grown)));
        }
        return text.toString();
    }
}
