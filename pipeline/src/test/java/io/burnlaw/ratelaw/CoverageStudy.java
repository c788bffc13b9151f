package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.IntervalMethods.BootstrapIntervals;
import io.burnlaw.validation.StudyReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** How often the stated 95 % intervals hold, over simulated campaigns whose law is known. */
class CoverageStudy {

    private static final int CAMPAIGNS = 8_000;
    private static final int BOOTSTRAPPED = 4_000;
    private static final int REPLICATES = 1_000;
    private static final int WITH_PRESSURE_ERRORS = 1_000;
    private static final int[] POINTS = {5, 8, 12, 30};
    private static final double[] SCATTERS = {0.01, 0.03, 0.10};
    private static final double LEVEL = 0.95;
    private static final double LOW = 0.935;
    private static final double HIGH = 0.965;

    private final StringBuilder text = new StringBuilder();

    /** What is counted: intervals that hold the truth, for a at 1 MPa, n, the rate at the reference, the next firing. */
    private static final class Tally {
        private final String name;
        private int campaigns;
        private final int[] held = new int[4];

        Tally(String name) {
            this.name = name;
        }

        void count(int what, Interval interval, double truth) {
            held[what] += interval.estimated()
                            .filter(e -> e.low() <= truth && truth <= e.high())
                            .isPresent()
                    ? 1
                    : 0;
        }

        double share(int what) {
            return held[what] / (double) campaigns;
        }
    }

    /** How one campaign comes about. */
    private interface Simulation {
        List<FitPoint> campaign(int count, double scatter, SplittableRandom random);
    }

    @Test
    void intervalsHoldAsOftenAsTheySay() {
        say("""
                ## Coverage of the intervals

                Truth: a = 6.2 mm/s at 1 MPa, n = 0.42. Pressures of a campaign are spread over 0.8 to 8 MPa, each moved at \
                random by up to a fifth of its distance to the next. An interval holds if it contains the truth; the next firing is simulated at a random pressure of \
                the range. Target: every 95 %% interval of a, of n and of the \
                next firing between 93.5 and 96.5 %% (of %d campaigns, one standard deviation of a count is 0.24 %%).
                """, CAMPAIGNS);
        proportional();
        constant();
        measured();
        shared();
        sameFiring();
        pressureErrors();
        StudyReport.section(40, "coverage", text.toString());
    }

    private void proportional() {
        say("\n### Proportional weights, Student's t (the published interval)\n");
        say("| scatter of the rate | points | a at 1 MPa | n | rate at reference | next firing |");
        say("| --- | --- | --- | --- | --- | --- |");
        long seed = 1;
        for (boolean normal : new boolean[] {false, true}) {
            for (double scatter : SCATTERS) {
                for (int count : POINTS) {
                    Tally tally = tally(
                            normal ? "normal" : "log-normal",
                            count,
                            scatter,
                            seed++,
                            FitOptions.defaults(),
                            scattered(normal));
                    say("| %s, %.0f %% | %d | %s |", tally.name, 100 * scatter, count, shares(tally));
                    assertWithin(tally, 0, 1, 3);
                }
            }
        }
        say("""

                The profile of the sum of squares gives exactly the same interval here (the profile of a \
                straight line between logarithms is a parabola); a test checks this.

                ### The bootstrap for comparison

                BCa over firings, %d replicates, %d campaigns each, log-normal scatter of 3 %%. With few firings the draws have too few different outcomes, and the interval is too short: it is \
                shown in addition to the published one, never instead of it.
                """, REPLICATES, BOOTSTRAPPED);
        say("| points | a at 1 MPa, t | a, BCa | n, t | n, BCa |\n| --- | --- | --- | --- | --- |");
        for (int count : POINTS) {
            Tally student = new Tally("t");
            Tally bootstrap = new Tally("BCa");
            SplittableRandom random = new SplittableRandom(100 + count);
            for (int run = 0; run < BOOTSTRAPPED; run++) {
                List<FitPoint> points = scattered(false).campaign(count, 0.03, random);
                WeightedSolution solution =
                        (WeightedSolution) WeightedFit.fit(points, Weighting.PROPORTIONAL, PressureErrors.NONE);
                count(student, Laws.of(solution, points, Weighting.PROPORTIONAL));
                BootstrapIntervals intervals = new BootstrapIntervals(
                        new Resampling(solution, points), solution.parameters, REPLICATES, random.nextLong(), LEVEL);
                double at = Math.log(1e6) - solution.lnPressureUnit;
                bootstrap.campaigns++;
                bootstrap.count(0, intervals.lnRate(at), Math.log(Campaigns.RATE_AT_MEGAPASCAL) - solution.lnRateUnit);
                bootstrap.count(1, intervals.exponent(), Campaigns.EXPONENT);
            }
            say(
                    "| %d | %s | %s | %s | %s |",
                    count, percent(student, 0), percent(bootstrap, 0), percent(student, 1), percent(bootstrap, 1));
        }
    }

    private void constant() {
        say("""

                ### Constant weights

                Normal scatter of the same size at every pressure, given as a share of the rate at 2.5 MPa. \
                Profile and Student's t, %d campaigns each.
                """, BOOTSTRAPPED);
        say("| scatter | points | a, t | a, profile | n, t | n, profile | next firing |");
        say("| --- | --- | --- | --- | --- | --- | --- |");
        long seed = 200;
        for (double scatter : SCATTERS) {
            for (int count : POINTS) {
                Tally student = new Tally("t");
                Tally profile = new Tally("profile");
                SplittableRandom random = new SplittableRandom(seed++);
                for (int run = 0; run < BOOTSTRAPPED; run++) {
                    List<FitPoint> points = evenScatter().campaign(count, scatter, random);
                    WeightedSolution solution =
                            (WeightedSolution) WeightedFit.fit(points, Weighting.CONSTANT, PressureErrors.NONE);
                    RateLaw law = Laws.of(solution, points, Weighting.CONSTANT);
                    count(student, law);
                    double pressure = pressure(random);
                    double next = Campaigns.truth(pressure) + even(scatter) * Campaigns.normal(random);
                    student.count(3, law.predict(pressure, LEVEL), next);
                    ProfileIntervals intervals = new ProfileIntervals(solution, law.quantile(LEVEL), LEVEL);
                    profile.campaigns++;
                    profile.count(
                            0,
                            intervals.lnRate(Math.log(1e6) - solution.lnPressureUnit),
                            Math.log(Campaigns.RATE_AT_MEGAPASCAL) - solution.lnRateUnit);
                    profile.count(1, intervals.exponent(), Campaigns.EXPONENT);
                }
                say(
                        "| %.0f %% | %d | %s | %s | %s | %s | %s |",
                        100 * scatter,
                        count,
                        percent(student, 0),
                        percent(profile, 0),
                        percent(student, 1),
                        percent(profile, 1),
                        percent(student, 3));
                assertWithin(student, 0, 1, 3);
            }
        }
    }

    private void measured() {
        say("""

                ### Weights by measurement

                Each point's own standard uncertainty is drawn between 0.5 and 1.5 times the scatter and stated; the interval \
                is the normal one, since the scatter is known.
                """);
        say(
                "| scatter | points | a at 1 MPa | n | rate at reference | next firing |\n| --- | --- | --- | --- | --- | --- |");
        long seed = 300;
        for (double scatter : SCATTERS) {
            for (int count : POINTS) {
                Tally tally = tally(
                        "measured",
                        count,
                        scatter,
                        seed++,
                        FitOptions.defaults().with(Weighting.MEASURED),
                        (points, s, random) -> spread(points, random, pressure -> {
                            double std = s * (0.5 + random.nextDouble());
                            double rate = Campaigns.truth(pressure) * Math.exp(std * Campaigns.normal(random));
                            return point(pressure, 0, rate, std * rate, 0);
                        }));
                say("| %.0f %% | %d | %s |", 100 * scatter, count, shares(tally));
                assertWithin(tally, 0, 1);
            }
        }
    }

    private void shared() {
        say("""

                ### An error that all firings share

                Beside a scatter of 1 %, all rates of a campaign are off by one common factor of standard deviation 1.5 %, \
                stated as the points' systematic part. More firings do not reduce it, and the intervals include it. The last column is the interval of \
                a without it.
                """);
        say(
                "| points | a at 1 MPa | n | rate at reference | a, the shared error left out |\n| --- | --- | --- | --- | --- |");
        for (int count : POINTS) {
            Tally tally = new Tally("shared");
            Tally without = new Tally("without");
            SplittableRandom random = new SplittableRandom(400 + count);
            for (int run = 0; run < CAMPAIGNS; run++) {
                double factor = Math.exp(0.015 * Campaigns.normal(random));
                List<FitPoint> points = spread(
                        count,
                        random,
                        pressure -> point(
                                pressure,
                                0,
                                Campaigns.truth(pressure) * factor * Math.exp(0.01 * Campaigns.normal(random)),
                                0,
                                0.015));
                WeightedSolution solution =
                        (WeightedSolution) WeightedFit.fit(points, Weighting.PROPORTIONAL, PressureErrors.NONE);
                count(tally, Laws.of(solution, points, Weighting.PROPORTIONAL));
                List<FitPoint> silent = points.stream()
                        .map(p -> new FitPoint(p.id(), p.cluster(), p.pressure(), 0, p.rate(), 0, 0))
                        .toList();
                count(without, Laws.of(solution, silent, Weighting.PROPORTIONAL));
            }
            say(
                    "| %d | %s | %s | %s | %s |",
                    count, percent(tally, 0), percent(tally, 1), percent(tally, 2), percent(without, 0));
            assertThat(tally.share(0)).isBetween(LOW, 0.985);
            assertThat(tally.share(1)).isBetween(LOW, HIGH);
        }
    }

    private void sameFiring() {
        say("""

                ### Several points of one firing

                Every second firing gives two points, its own and one at a third of its pressure, with a scatter of 3 %% and a \
                correlation of 0, 0.5 or 1 between them. They share one weight and count as one firing: by construction the coverage is on the safe side, \
                never below 95 %%.
                """);
        say("| correlation | firings | a at 1 MPa | n | rate at reference |\n| --- | --- | --- | --- | --- |");
        long seed = 500;
        for (double correlation : new double[] {0, 0.5, 1}) {
            for (int count : POINTS) {
                Tally tally = new Tally("clusters");
                SplittableRandom random = new SplittableRandom(seed++);
                for (int run = 0; run < CAMPAIGNS; run++) {
                    List<FitPoint> points = new ArrayList<>();
                    for (FitPoint p : scattered(false).campaign(count, 0, random)) {
                        double own = Campaigns.normal(random);
                        points.add(moved(p, p.id(), p.pressure(), 0.03 * own));
                        if (points.size() % 3 == 1) {
                            double second = correlation * own
                                    + Math.sqrt(1 - correlation * correlation) * Campaigns.normal(random);
                            points.add(moved(p, p.id() + "-dwell", p.pressure() / 3, 0.03 * second));
                        }
                    }
                    count(tally, law(points, FitOptions.defaults()));
                }
                say(
                        "| %.1f | %d | %s | %s | %s |",
                        correlation, count, percent(tally, 0), percent(tally, 1), percent(tally, 2));
                assertThat(tally.share(0)).isBetween(LOW, 1.0);
                assertThat(tally.share(1)).isBetween(LOW, 1.0);
            }
        }
    }

    private void pressureErrors() {
        say("""

                ### Errors in pressure

                Scatter of the rate 1 %%; each pressure is off by a normal error of 40 kPa and 0.5 %%, so that the lowest is \
                uncertain by 5 %% and the highest by 1 %%. Neglected, effective variance (the default) and orthogonal distance, %d \
                campaigns each. With few firings the scatter that sets the weights is itself uncertain: the intervals of a and n \
                are then too wide rather than too short; the coverage of the rate at the reference pressure is \
                up to three points too low.
                """, WITH_PRESSURE_ERRORS);
        say("| points | treatment | a at 1 MPa | n | rate at reference | mean of n less truth | spread of n |");
        say("| --- | --- | --- | --- | --- | --- | --- |");
        for (int count : POINTS) {
            for (PressureErrors errors : PressureErrors.values()) {
                Tally tally = new Tally(errors.name());
                SplittableRandom random = new SplittableRandom(600 + count);
                double sum = 0;
                double square = 0;
                for (int run = 0; run < WITH_PRESSURE_ERRORS; run++) {
                    List<FitPoint> points = spread(count, random, pressure -> {
                        double std = 40e3 + 0.005 * pressure;
                        double seen = pressure + std * Campaigns.normal(random);
                        double rate = Campaigns.truth(pressure) * Math.exp(0.01 * Campaigns.normal(random));
                        return point(seen, std, rate, 0, 0);
                    });
                    RateLaw law = law(points, FitOptions.defaults().with(errors));
                    count(tally, law);
                    double off = law.exponent() - Campaigns.EXPONENT;
                    sum += off;
                    square += off * off;
                }
                double mean = sum / WITH_PRESSURE_ERRORS;
                say(
                        "| %d | %s | %s | %s | %s | %+.5f | %.5f |",
                        count,
                        errors.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        percent(tally, 0),
                        percent(tally, 1),
                        percent(tally, 2),
                        mean,
                        Math.sqrt(square / WITH_PRESSURE_ERRORS - mean * mean));
                if (errors == PressureErrors.EFFECTIVE_VARIANCE) {
                    assertThat(tally.share(1)).isBetween(LOW - 0.01, 1.0); // of 1,000: a standard deviation is 0.7 %
                }
            }
        }
    }

    private Tally tally(String name, int count, double scatter, long seed, FitOptions options, Simulation simulation) {
        Tally tally = new Tally(name);
        SplittableRandom random = new SplittableRandom(seed);
        for (int run = 0; run < CAMPAIGNS; run++) {
            RateLaw law = law(simulation.campaign(count, scatter, random), options);
            count(tally, law);
            double pressure = pressure(random);
            double factor = name.equals("normal")
                    ? 1 + scatter * Campaigns.normal(random)
                    : Math.exp(scatter * Campaigns.normal(random));
            tally.count(3, law.predict(pressure, LEVEL), Campaigns.truth(pressure) * factor);
        }
        return tally;
    }

    private static void count(Tally tally, RateLaw law) {
        tally.campaigns++;
        tally.count(0, law.interval(RateLaw.COEFFICIENT_PRESSURE, LEVEL), Campaigns.RATE_AT_MEGAPASCAL);
        tally.count(1, law.exponentInterval(LEVEL), Campaigns.EXPONENT);
        tally.count(2, law.interval(law.referencePressure(), LEVEL), Campaigns.truth(law.referencePressure()));
    }

    private static RateLaw law(List<FitPoint> points, FitOptions options) {
        WeightedSolution solution =
                (WeightedSolution) WeightedFit.fit(points, options.weighting(), options.pressureErrors());
        return Laws.of(solution, points, options.weighting());
    }

    private static Simulation scattered(boolean normal) {
        return (count, scatter, random) -> spread(count, random, pressure -> {
            double z = scatter * Campaigns.normal(random);
            return point(pressure, 0, Campaigns.truth(pressure) * (normal ? 1 + z : Math.exp(z)), 0, 0);
        });
    }

    private static Simulation evenScatter() {
        return (count, scatter, random) -> spread(
                count,
                random,
                pressure -> point(
                        pressure,
                        0,
                        Math.max(1e-5, Campaigns.truth(pressure) + even(scatter) * Campaigns.normal(random)),
                        0,
                        0));
    }

    private static double even(double scatter) {
        return scatter * Campaigns.truth(2.5e6);
    }

    private interface Firing {
        FitPoint at(double pressure);
    }

    private static List<FitPoint> spread(int count, SplittableRandom random, Firing firing) {
        List<FitPoint> points = new ArrayList<>();
        double step = Math.log(10) / (count - 1);
        for (int i = 0; i < count; i++) {
            double pressure = 0.8e6 * Math.exp(step * (i + 0.4 * (random.nextDouble() - 0.5)));
            FitPoint p = firing.at(pressure);
            points.add(new FitPoint(
                    "f" + i, "f" + i, p.pressure(), p.pressureStd(), p.rate(), p.rateStd(), p.systematic()));
        }
        return points;
    }

    private static FitPoint point(double pressure, double pressureStd, double rate, double rateStd, double systematic) {
        return new FitPoint("f", "f", pressure, pressureStd, rate, rateStd, systematic);
    }

    private static FitPoint moved(FitPoint p, String id, double pressure, double ln) {
        return new FitPoint(id, p.cluster(), pressure, 0, Campaigns.truth(pressure) * Math.exp(ln), 0, 0);
    }

    private static double pressure(SplittableRandom random) {
        return 0.8e6 * Math.pow(10, random.nextDouble());
    }

    private static void assertWithin(Tally tally, int... what) {
        for (int each : what) {
            assertThat(tally.share(each)).as(tally.name + " " + each).isBetween(LOW, HIGH);
        }
    }

    private static String shares(Tally tally) {
        return percent(tally, 0) + " | " + percent(tally, 1) + " | " + percent(tally, 2) + " | " + percent(tally, 3);
    }

    private static String percent(Tally tally, int what) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * tally.share(what));
    }

    private void say(String format, Object... values) {
        text.append(values.length == 0 ? format.replace("%%", "%") : String.format(Locale.ROOT, format, values))
                .append('\n');
    }
}
