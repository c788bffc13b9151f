package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.ScenarioReader;
import io.burnlaw.validation.StudyReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Campaigns of firings that were timed by a camera, alone and beside recorded ones. The burns come from the whole chamber
 * model, with an igniter, a surface that lights over time and a core off its axis: the reduction of a timed burn knows
 * none of these.
 */
class TimedFiringsStudy {

    private static final int CAMPAIGNS = Integer.getInteger("burnlaw.campaigns", 200);
    private static final double RATE = 5.0;
    private static final double EXPONENT = 0.36;
    private static final double VELOCITY = 890;

    /** Throats that spread the pressure from about 0.6 to 4 MPa [mm]. */
    private static final double[] THROATS = {14.4, 13.1, 12.2, 11.2, 10.4, 9.8, 9.1, 8.6, 8.2, 7.8};

    /** Throats of the fast and of the smouldering motors of a propellant with a slow regime [mm]. */
    private static final double[] TWO_REGIMES = {7.8, 8.3, 8.9, 9.6, 10.3, 11.0, 16, 18, 20, 22};

    private static final double SLOW_RATE = 1.2;
    private static final double SLOW_EXPONENT = 0.4;

    /** What 200 campaigns show in 39 of 40 cases where an interval covers 95 %: 0.95 less two standard errors. */
    private static final double LEAST = 0.92;

    @TempDir
    private Path folder;

    private enum Kind {
        TIMED("ten timed firings, c* stated as within 2 %"),
        UNKNOWN_VELOCITY("ten timed firings, c* not stated"),
        MIXED("five recorded, five timed"),
        RECORDED("the same ten motors, recorded");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        boolean timed(int firing) {
            return this != RECORDED && (this != MIXED || firing % 2 == 1);
        }
    }

    private record Outcome(
            double rateError, double exponentError, boolean rateHeld, boolean exponentHeld, double width) {}

    @Test
    void intervalsOfTimedCampaignsHold() throws IOException {
        StringBuilder rows = new StringBuilder();
        for (Kind kind : Kind.values()) {
            List<Outcome> outcomes = new ArrayList<>();
            for (int c = 0; c < CAMPAIGNS; c++) {
                outcomes.add(outcome(kind, c));
            }
            double held = share(outcomes.stream().filter(Outcome::rateHeld).count());
            double exponentHeld =
                    share(outcomes.stream().filter(Outcome::exponentHeld).count());
            rows.append(String.format(
                    Locale.ROOT,
                    "| %s | %+.1f %% | %.1f %% | %.1f %% | %+.3f | %.1f %% |%n",
                    kind.words,
                    100
                            * outcomes.stream()
                                    .mapToDouble(Outcome::rateError)
                                    .average()
                                    .orElseThrow(),
                    100
                            * outcomes.stream()
                                    .mapToDouble(Outcome::width)
                                    .average()
                                    .orElseThrow(),
                    100 * held,
                    outcomes.stream()
                            .mapToDouble(Outcome::exponentError)
                            .average()
                            .orElseThrow(),
                    100 * exponentHeld));
            // What the recorded ones hold is for comparison here, and another study's claim.
            assertThat(held).as(kind + ": rate").isGreaterThanOrEqualTo(kind == Kind.RECORDED ? 0.8 : LEAST);
            assertThat(exponentHeld).as(kind + ": exponent").isGreaterThanOrEqualTo(LEAST);
        }
        Slow slow = slowRegimes();
        assertThat(slow.found()).as("slow regimes found").isGreaterThanOrEqualTo(LEAST);
        assertThat(slow.held()).as("slow rate at the mean pressure").isGreaterThanOrEqualTo(LEAST);
        StudyReport.section(
                53,
                "timed-firings",
                String.format(
                        Locale.ROOT,
                        """
                        ## Firings that were timed and not recorded

                        %d simulated campaigns a row, ten motors each, r = %.1f · P^%.2f (mm/s, MPa), scatter of 1 %% from \
                        firing to firing. A camera times each burn to 2 %%, from the igniter to the last flame: that is \
                        longer than the mean web burns. Held: share of the campaigns whose 95 %% interval contains the truth.

                        | campaign | rate at the reference: bias | half width | held | exponent: bias | held |
                        | --- | --- | --- | --- | --- | --- |
                        %s
                        A propellant with a slow regime (%.1f · P^%.1f below 0.4 MPa): three timed motors that burn fast, \
                        seven that smoulder, four of them with their flow not choked. Two regimes found in \
                        **%.1f %%** of the campaigns; the band of the slow law holds the true slow rate in **%.1f %%**.
                        """,
                        CAMPAIGNS,
                        RATE,
                        EXPONENT,
                        rows,
                        SLOW_RATE,
                        SLOW_EXPONENT,
                        100 * slow.found(),
                        100 * slow.held()));
    }

    private static double share(long count) {
        return count / (double) CAMPAIGNS;
    }

    private record Slow(double found, double held) {}

    private Slow slowRegimes() throws IOException {
        int found = 0;
        int held = 0;
        for (int c = 0; c < CAMPAIGNS; c++) {
            Regimes regimes = characterized(scenario(Kind.TIMED, c, true), "slow-" + c)
                    .regimes()
                    .orElseThrow();
            if (regimes.selected() == 2) {
                found++;
                Regime slow = regimes.regimes().get(0);
                double pressure = Math.sqrt(slow.low() * slow.high());
                double truth = SLOW_RATE * 1e-3 * StrictMath.pow(pressure / 1e6, SLOW_EXPONENT);
                Interval.Estimated rate =
                        slow.law().interval(pressure, 0.95).estimated().orElseThrow();
                held += rate.low() <= truth && truth <= rate.high() ? 1 : 0;
            }
        }
        return new Slow(share(found), found == 0 ? 0 : held / (double) found);
    }

    private Outcome outcome(Kind kind, int campaign) throws IOException {
        RateLaw law = characterized(scenario(kind, campaign, false), kind + "-" + campaign)
                .fit()
                .fitted()
                .orElseThrow()
                .law();
        double pressure = law.referencePressure();
        double truth = RATE * 1e-3 * StrictMath.pow(pressure / 1e6, EXPONENT);
        Interval.Estimated rate = law.interval(pressure, 0.95).estimated().orElseThrow();
        Interval.Estimated exponent = law.exponentInterval(0.95).estimated().orElseThrow();
        return new Outcome(
                law.rate(pressure) / truth - 1,
                law.exponent() - EXPONENT,
                rate.low() <= truth && truth <= rate.high(),
                exponent.low() <= EXPONENT && EXPONENT <= exponent.high(),
                (rate.high() - rate.low()) / 2 / truth);
    }

    private static String scenario(Kind kind, int campaign, boolean twoRegimes) {
        SplittableRandom random = new SplittableRandom(7_100 + campaign);
        double stated = VELOCITY * (1 + 0.02 * random.nextGaussian());
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                """
                format: burnlaw-scenario/1
                title: Timed firings, invented
                seed: %d
                ambient_pressure: 101 kPa absolute
                formulations:
                  p:
                    title: Invented
                    density: 1.79 g/cm3
                    characteristic_velocity: %.1f m/s
                %s    specific_heat_ratio: 1.13
                    rate_scatter: 1 %%
                    velocity_scatter: 0.5 %%
                    law:
                %s
                grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                instruments: {caliper: 0.02 mm, scale: 0.2 g, density: 0.01 g/cm3, core_offset: 0.2 mm}
                logger: {sample_interval: 2 ms, noise: 3 kPa, gain_error: 0.3 %%, sensor_class: 0.5 %% of 7 MPa, longest: 60 s}
                firings:
                """,
                campaign,
                VELOCITY,
                kind == Kind.TIMED
                        ? String.format(Locale.ROOT, "    expected_characteristic_velocity: %.1f m/s%n", stated)
                        : "",
                law(twoRegimes)));
        double[] throats = twoRegimes ? TWO_REGIMES : THROATS;
        IntStream.range(0, throats.length)
                .forEach(i -> text.append(String.format(
                        Locale.ROOT,
                        "  F%02d: {formulation: p, throat: %.2f mm%s%s}%n",
                        i,
                        throats[i],
                        // Three igniters are strong enough to take their motors past the threshold.
                        twoRegimes && i < 3 ? ", igniter: 6" : "",
                        kind.timed(i) ? ", timed: 2 %" : "")));
        return text.toString();
    }

    private static String law(boolean twoRegimes) {
        String fast = String.format(Locale.ROOT, "rate: %.3f mm/s, at: 1 MPa, exponent: %.3f}", RATE, EXPONENT);
        return twoRegimes
                ? String.format(
                        Locale.ROOT,
                        "      slow: {rate: %.3f mm/s, at: 1 MPa, exponent: %.3f}%n      fast: {from: 0.4 MPa, %s",
                        SLOW_RATE,
                        SLOW_EXPONENT,
                        fast)
                : "      all: {" + fast;
    }

    private FormulationResult characterized(String scenario, String name) throws IOException {
        Path made = Files.createDirectories(folder.resolve(name));
        Path file = made.resolve("scenario.yaml");
        Files.writeString(file, scenario);
        MadeCampaign.of(ScenarioReader.read(file).orElseThrow()).writeTo(made.resolve("campaign"));
        Campaign read = CampaignReader.read(made.resolve("campaign")).orElseThrow();
        return Characterizer.characterize(read, 2, Progress.silent())
                .formulations()
                .get(0);
    }
}
