package io.burnlaw.report;

import io.burnlaw.report.document.Along;
import io.burnlaw.report.document.Break;
import io.burnlaw.report.document.BudgetLine;
import io.burnlaw.report.document.CampaignSummary;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.ClosureRow;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.ComparisonTests;
import io.burnlaw.report.document.CurvePoint;
import io.burnlaw.report.document.DoseTrend;
import io.burnlaw.report.document.DrillChoice;
import io.burnlaw.report.document.Events;
import io.burnlaw.report.document.FTest;
import io.burnlaw.report.document.FasterAnswer;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Generator;
import io.burnlaw.report.document.Input;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.MethodInterval;
import io.burnlaw.report.document.NotFitted;
import io.burnlaw.report.document.OtherFit;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.PlannedMotor;
import io.burnlaw.report.document.PlannedThroat;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Rates;
import io.burnlaw.report.document.RatioPoint;
import io.burnlaw.report.document.RegimeEvidence;
import io.burnlaw.report.document.Regimes;
import io.burnlaw.report.document.Rival;
import io.burnlaw.report.document.Stability;
import io.burnlaw.report.document.TemperatureSensitivity;
import io.burnlaw.report.document.Threshold;
import io.burnlaw.report.document.Throat;
import io.burnlaw.report.document.TraceHistory;
import io.burnlaw.report.document.UnitPair;
import io.burnlaw.report.document.WithinBetween;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** An invented document that has something in every member: two propellants, ten firings, strands, a plan. */
public final class SampleDocument {

    private static final double KELVIN_OF_THE_DAY = 294.15;

    private SampleDocument() {}

    /** {@return the document} */
    public static Characterization rich() {
        List<Firing> firings = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(7);
        List<Point> base = new ArrayList<>();
        List<ClosureRow> rows = new ArrayList<>();
        double[] pressures = {0.62, 0.8, 1.9, 2.3, 2.9, 3.4, 4.2, 5.1};
        for (int i = 0; i < pressures.length; i++) {
            String id = String.format(java.util.Locale.ROOT, "OR-%02d", i + 1);
            double p = pressures[i];
            double r = rate(p) * (1 + 0.015 * (random.nextDouble() - 0.5) * 2);
            base.add(point(id, p, r, i < 2 ? 1 : 2, random));
            firings.add(firing(id, "orchard", p, r, i));
            rows.add(row(id, p, r, random));
        }
        List<Point> candidate = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            String id = "OA-" + (i + 1);
            double p = 1.7 + 0.8 * i;
            double r = rate(p) * 1.12 * (1 + 0.02 * (random.nextDouble() - 0.5));
            candidate.add(point(id, p, r, 1, random));
            firings.add(firing(id, "orchard-x1", p, r, i + 20));
        }
        firings.add(rejected());
        return new Characterization(
                Characterization.FORMAT,
                new Generator("burnlaw", "0.1.0"),
                null,
                campaign(),
                List.of(
                        new Input("campaign.yaml", "a".repeat(64), 1432),
                        new Input("firings.csv", "0123456789abcdef".repeat(4), 2210),
                        new Input("traces/OR-01.csv", "b".repeat(64), 48211)),
                List.of(orchard(base, rows), additive(candidate), unfitted()),
                firings,
                List.of(comparison(), notCompared()),
                List.of(new DoseTrend(
                        "copper oxide",
                        "orchard",
                        List.of("orchard", "orchard-x1"),
                        new Quantity(0.11, null, 0.08, 0.14, 0.95, 0.014),
                        0.0004,
                        "Each per cent of copper oxide raises the rate by 12 % (95 %: 8 % to 15 %).")),
                List.of(plan()),
                List.of(
                        "These numbers describe the invented firings of this document and replace neither a proof test nor distance and shelter.",
                        "Local law and licensed practice come before anything that is written here."));
    }

    /** {@return the same document with hostile words wherever words may stand} */
    public static Characterization hostile() {
        String evil =
                "</script><script>alert(1)</script><img src=x onerror=alert(1)> \u202Eevil\u202C & \"quoted\" 'single' =1+1";
        Characterization plain = rich();
        Firing first = plain.firings().get(0);
        Firing bad = new Firing(
                "../../" + evil,
                first.formulation(),
                "flagged",
                evil,
                evil,
                List.of(new Finding("spikes", "note", evil, evil, evil, null)),
                first.events(),
                first.burnTime(),
                first.actionTime(),
                first.web(),
                first.meanPressure(),
                first.maxPressure(),
                first.rateMeanPressure(),
                first.rate(),
                first.characteristicVelocity(),
                first.throat(),
                null,
                null,
                null,
                List.of(new BudgetLine(evil, 1, evil, 0.01, 1)),
                first.along(),
                first.traceHistory());
        Formulation f = plain.formulations().get(0);
        List<Point> points = new ArrayList<>(f.points());
        Point p = points.get(0);
        points.set(
                0,
                new Point(
                        "=cmd|' /C calc'!A0",
                        evil,
                        bad.id(),
                        "firing",
                        p.pressure(),
                        p.meanPressure(),
                        p.rate(),
                        null,
                        evil,
                        false,
                        false,
                        evil,
                        null,
                        null));
        Formulation badFormulation = new Formulation(
                "orchard",
                evil,
                true,
                null,
                null,
                null,
                f.density(),
                f.characteristicVelocity(),
                evil,
                points,
                f.singleLaw(),
                null,
                f.otherFits(),
                f.regimes(),
                f.threshold(),
                f.faster(),
                null,
                f.stability(),
                null,
                f.closure(),
                f.findings());
        CampaignSummary c = plain.campaign();
        return new Characterization(
                plain.format(),
                new Generator("burnlaw", evil),
                evil,
                new CampaignSummary(
                        evil,
                        evil,
                        evil,
                        evil,
                        c.ambientPressure(),
                        true,
                        null,
                        null,
                        null,
                        evil,
                        evil,
                        0.95,
                        1,
                        List.of(evil)),
                List.of(new Input(evil, evil, 1)),
                List.of(badFormulation),
                List.of(bad),
                List.of(),
                List.of(),
                List.of(),
                List.of(evil));
    }

    /** {@return a document in which nothing could be fitted and nothing is known} */
    public static Characterization bare() {
        Characterization rich = rich();
        return new Characterization(
                rich.format(),
                rich.generator(),
                null,
                new CampaignSummary(
                        "Bare",
                        null,
                        null,
                        null,
                        Quantity.of(0.101325, "MPa"),
                        true,
                        null,
                        null,
                        null,
                        "mass-balance",
                        "proportional",
                        0.95,
                        1,
                        List.of()),
                List.of(),
                List.of(unfitted()),
                List.of(rejected()),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static double rate(double p) {
        return p < 1.1 ? 1.2 * Math.pow(p, 0.45) : 3.9 * Math.pow(p, 0.33);
    }

    private static CampaignSummary campaign() {
        return new CampaignSummary(
                "Orchard sugar, first characterization (invented)",
                "Example Propulsion Club",
                "CC-BY-4.0",
                "All firings on one stand, one sensor. Everything here is invented.",
                new Quantity(0.0986, "MPa", null, null, null, 0.0002),
                false,
                Quantity.of(KELVIN_OF_THE_DAY, "K"),
                Quantity.of(5.5, "MPa"),
                1.5,
                "mass-balance",
                "proportional",
                0.95,
                20260101L,
                List.of(
                        "traces/OR-01.csv: the column time [ms] was taken for the time.",
                        "Decimal comma in firings.csv."));
    }

    private static Point point(String id, double p, double r, int segment, SplittableRandom random) {
        return new Point(
                id,
                id,
                id,
                "firing",
                new Quantity(p, "MPa", p * 0.985, p * 1.015, 0.95, p * 0.0075),
                new Quantity(p * 1.004, "MPa", null, null, null, p * 0.0075),
                new Quantity(r, "mm/s", r * 0.976, r * 1.024, 0.95, r * 0.012),
                Quantity.of(KELVIN_OF_THE_DAY, "K"),
                "mass-balance",
                id.endsWith("4"),
                true,
                null,
                random.nextDouble() * 4 - 2,
                segment);
    }

    private static ClosureRow row(String id, double p, double r, SplittableRandom random) {
        double t = 8 / r;
        double off = 1 + 0.05 * (random.nextDouble() - 0.5);
        return new ClosureRow(
                id,
                Quantity.of(1.18 * p, "MPa"),
                Quantity.of(1.18 * p * off, "MPa"),
                Quantity.of(p, "MPa"),
                Quantity.of(p * (1 + (off - 1) * 0.6), "MPa"),
                Quantity.of(t, "s"),
                Quantity.of(t * (2 - off), "s"));
    }

    private static Firing firing(String id, String formulation, double p, double r, int seed) {
        double burn = 8 / r;
        SplittableRandom random = new SplittableRandom(seed + 100);
        List<Double> time = new ArrayList<>();
        List<Double> pressure = new ArrayList<>();
        List<Double> simulated = new ArrayList<>();
        List<Along> along = new ArrayList<>();
        for (int i = 0; i <= 300; i++) {
            double t = -0.4 + i * (burn + 1.4) / 300;
            double shape = shape(t, burn);
            time.add(t);
            pressure.add(Math.max(0.0986 + p * shape + 0.01 * (random.nextDouble() - 0.5), 0.05));
            simulated.add(0.0986 + p * 1.02 * shape(t - 0.01, burn));
            if (i % 10 == 0 && t > 0.15 * burn && t < 0.9 * burn) {
                double here = 0.0986 + p * shape;
                along.add(new Along(
                        t,
                        8 * t / burn,
                        here,
                        r * Math.pow(here / p, 0.34) * (1 + 0.01 * (random.nextDouble() - 0.5))));
            }
        }
        boolean flagged = seed == 2 || seed == 23;
        List<Finding> findings = flagged
                ? List.of(
                        new Finding(
                                "mains-hum",
                                "note",
                                "Mains hum",
                                "A line at 50 Hz stands 12 times out of the noise.",
                                "Removed for the timing of events. Ground the sensor at one point only.",
                                null),
                        new Finding(
                                "blockage",
                                "caution",
                                "Transient blockage",
                                "A pressure hump of 0.31 MPa lasts 40 ms.",
                                "Look for a torn inhibitor or slag in the nozzle.",
                                new Quantity(burn * 0.55, "s", null, null, null, null)))
                : List.of();
        return new Firing(
                id,
                formulation,
                flagged ? "flagged" : "used",
                "traces/" + id + ".csv",
                seed == 3 ? "windy" : null,
                findings,
                new Events(
                        seconds(-0.03, 0.004),
                        seconds(0, 0.003),
                        seconds(burn, 0.008),
                        seconds(burn - 0.01, 0.006),
                        seconds(burn + 0.012, 0.009),
                        seconds(burn + 0.55, 0.02),
                        seconds(0.05, 0.002),
                        seconds(burn + 0.2, 0.004)),
                seconds(burn, 0.009),
                seconds(burn + 0.15, 0.005),
                new Quantity(8.0, "mm", null, null, null, 0.04),
                new Quantity(p * 1.004, "MPa", null, null, null, p * 0.0075),
                new Quantity(1.18 * p, "MPa", null, null, null, p * 0.008),
                new Quantity(p, "MPa", null, null, null, p * 0.0075),
                new Rates(
                        new Quantity(r * 1.006, "mm/s", null, null, null, r * 0.014),
                        new Quantity(r, "mm/s", null, null, null, r * 0.012)),
                new Quantity(884.3, "m/s", 866.1, 902.5, 0.95, 9.1),
                new Throat(
                        new Quantity(7.9, "mm", null, null, null, 0.03),
                        new Quantity(7.98, "mm", null, null, null, 0.03)),
                seed == 5 ? Quantity.of(212.4, "N.s", 2.2) : null,
                seed == 5 ? Quantity.of(118.2, "s", 1.6) : null,
                seed == 5 ? Quantity.of(1.38, "1", 0.02) : null,
                List.of(
                        new BudgetLine("web", 0.04, "mm", 0.005, 0.17),
                        new BudgetLine("burn time", 0.009, "s", 0.0082, 0.47),
                        new BudgetLine("throat", 0.03, "mm", 0.0055, 0.21),
                        new BudgetLine("sensor class", 0.5, "%", 0.0046, 0.15)),
                along,
                new TraceHistory(time, pressure, null, time, simulated));
    }

    private static double shape(double t, double burn) {
        if (t <= 0) {
            return 0;
        }
        double u = t / burn;
        double rise = 1 - Math.exp(-t / 0.05);
        double plateau = 0.86 + 0.32 * 4 * u * (1 - u);
        double fall = u > 1 ? Math.exp(-(t - burn) / 0.12) : 1;
        return rise * fall * (u > 1 ? 0.86 : plateau);
    }

    private static Quantity seconds(double value, double std) {
        return Quantity.of(value, "s", std);
    }

    private static Firing rejected() {
        return new Firing(
                "OR-09",
                "orchard",
                "rejected",
                "traces/OR-09.csv",
                null,
                List.of(new Finding(
                        "truncated",
                        "rejection",
                        "The record ends too early",
                        "The record ends at 0.41 s while the pressure is still 2.1 MPa.",
                        "Record longer than the longest burn that you expect.",
                        null)),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                null);
    }

    private static Law law(String regime, double a, double n, double low, double high, int points) {
        double reference = 2.5;
        double varLn = 1.6e-5;
        double varN = 6.4e-5;
        List<CurvePoint> curve = new ArrayList<>();
        for (int i = 0; i <= 40; i++) {
            double p = low * Math.pow(high / low, i / 40.0);
            double r = a * Math.pow(p, n);
            double x = Math.log(p / reference);
            double mean = 2.45 * Math.sqrt(varLn + x * x * varN);
            double next = 2.45 * Math.sqrt(varLn + x * x * varN + 1.2e-4);
            curve.add(new CurvePoint(
                    p, r, r * Math.exp(-mean), r * Math.exp(mean), r * Math.exp(-next), r * Math.exp(next)));
        }
        List<List<Double>> covariance = List.of(List.of(varLn, 0.0), List.of(0.0, varN));
        double at = a * Math.pow(reference, n);
        return new Law(
                regime,
                new Quantity(a, "mm/s", a * 0.978, a * 1.022, 0.95, a * 0.009),
                new Quantity(n, null, n - 0.0196, n + 0.0196, 0.95, 0.008),
                Quantity.of(reference, "MPa"),
                new Quantity(at, "mm/s", at * 0.99, at * 1.01, 0.95, at * 0.004),
                covariance,
                Quantity.of(low, "MPa"),
                Quantity.of(high, "MPa"),
                0.011,
                points - 2,
                points,
                "profile",
                "proportional",
                "effective-variance",
                List.of(
                        new UnitPair(
                                "[psi]", "[in_i]/s", a / 25.4 * Math.pow(6.894757e-3, n), null, null, n, covariance),
                        new UnitPair("Pa", "m/s", a * 1e-3 * Math.pow(1e-6, n), null, null, n, covariance)),
                List.of(
                        new MethodInterval(
                                "student-t", 0.95, a * 0.979, a * 1.021, n - 0.0193, n + 0.0193, false, null),
                        new MethodInterval("profile", 0.95, a * 0.978, a * 1.022, n - 0.0196, n + 0.0196, true, null),
                        new MethodInterval(
                                "bootstrap-bca", 0.95, a * 0.981, a * 1.02, n - 0.018, n + 0.0189, false, 2000)),
                curve);
    }

    private static Formulation orchard(List<Point> points, List<ClosureRow> rows) {
        Regimes regimes = new Regimes(
                2,
                "jumping",
                List.of(law("slow-burning", 1.2, 0.45, 0.6, 0.85, 2), law("steady", 3.9, 0.33, 1.85, 5.2, 6)),
                List.of(new Break(new Quantity(1.12, "MPa", 0.81, 1.88, 0.95, 0.28), "jump", 3.1, 0.45, 0.33)),
                new RegimeEvidence(
                        0.004,
                        212.0,
                        List.of(31.2, -18.4, -15.0),
                        2,
                        2,
                        499,
                        List.of(new Rival("two-term", 12.4, true, "The two-term law fits worse than the jump.")),
                        "Two regimes: one law leaves residuals that chance gives in 0.4 % of cases."));
        return new Formulation(
                "orchard",
                "Orchard sugar, baseline",
                true,
                null,
                null,
                null,
                new Quantity(1.79, "g/cm3", null, null, null, 0.01),
                new Quantity(884.3, "m/s", 871.0, 897.0, 0.95, 6.2),
                "Orchard sugar burns at 5.28 mm/s at 2.5 MPa (95 %: 5.23 to 5.33), with n = 0.330 (95 %: 0.310 to 0.350) from 1.85 to 5.2 MPa; below 1.12 MPa (95 %: 0.81 to 1.88) it burns about three times slower.",
                points,
                law(null, 2.6, 0.62, 0.6, 5.2, 8),
                null,
                List.of(new OtherFit(
                        "huber",
                        3.88,
                        3.81,
                        3.95,
                        0.331,
                        0.315,
                        0.347,
                        "The robust fit agrees: no single point carries the law.")),
                regimes,
                new Threshold(
                        new Quantity(1.12, "MPa", 0.81, 1.88, 0.95, 0.28),
                        3.1,
                        List.of("OR-01", "OR-02"),
                        List.of("OR-03", "OR-04", "OR-05", "OR-06", "OR-07", "OR-08"),
                        231.0,
                        "Below 1.12 MPa the motor smoulders: keep the burning surface at 231 throat areas or more."),
                List.of(
                        new FasterAnswer(
                                2,
                                new Quantity(20.1, "MPa", 17.2, 24.0, 0.95, 1.6),
                                "Twice as fast needs 20.1 MPa, above the case limit."),
                        new FasterAnswer(3, null, "Three times as fast is out of reach.")),
                new TemperatureSensitivity(
                        new Quantity(0.0021, "1/K", 0.0011, 0.0031, 0.95, 0.0005),
                        new Quantity(0.0031, "1/K", null, null, null, 0.0008),
                        Quantity.of(KELVIN_OF_THE_DAY, "K"),
                        "10 K more raise the rate by 2.1 %."),
                new Stability(0.35, "A steady pressure exists: the upper limit of n is 0.35."),
                new WithinBetween(
                        new Quantity(0.338, null, 0.322, 0.354, 0.95, 0.008),
                        new Quantity(0.330, null, 0.310, 0.350, 0.95, 0.008),
                        0.011,
                        0.42,
                        "Both ways agree."),
                new Closure(
                        rows,
                        0.013,
                        0.009,
                        0.012,
                        true,
                        "The law gives back the measured peaks within 1.3 % (median)."),
                List.of(
                        new Finding(
                                "few-points",
                                "caution",
                                "Few points",
                                "The slow regime rests on 2 firings.",
                                "Fire again at another pressure.",
                                null),
                        new Finding(
                                "slow-regime",
                                "caution",
                                "Slow regime",
                                "Below 1.12 MPa it burns by a slower law.",
                                "Keep the motor above the threshold, or accept the slow burn knowingly.",
                                null)));
    }

    private static Formulation additive(List<Point> points) {
        return new Formulation(
                "orchard-x1",
                "Orchard sugar with 1 % copper oxide",
                false,
                "orchard",
                "copper oxide",
                0.01,
                new Quantity(1.8, "g/cm3", null, null, null, 0.01),
                new Quantity(879.0, "m/s", 861.0, 897.0, 0.95, 9.0),
                "With 1 % copper oxide it burns at 5.91 mm/s at 2.5 MPa (95 %: 5.85 to 5.97), with n = 0.329 (95 %: 0.309 to 0.349) from 1.7 to 4.9 MPa: 12 % faster than the baseline.",
                points,
                law(null, 4.37, 0.329, 1.7, 4.9, 5),
                null,
                List.of(),
                null,
                null,
                List.of(),
                null,
                new Stability(0.349, "A steady pressure exists."),
                null,
                null,
                List.of());
    }

    private static Formulation unfitted() {
        return new Formulation(
                "quince",
                "Quince sugar",
                false,
                "orchard",
                null,
                null,
                null,
                null,
                "No law: one point is not enough.",
                List.of(),
                null,
                new NotFitted(
                        "There is 1 usable point; a law needs 3.",
                        "Fire two more, one near 1.5 MPa and one near 4 MPa."),
                List.of(),
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                List.of());
    }

    private static Comparison comparison() {
        List<RatioPoint> ratio = new ArrayList<>();
        for (int i = 0; i <= 30; i++) {
            double p = 1.85 * Math.pow(4.9 / 1.85, i / 30.0);
            double half = 0.018 + 0.03 * Math.pow(Math.log(p / 3), 2);
            ratio.add(new RatioPoint(p, 1.12, 1.12 - half, 1.12 + half));
        }
        return new Comparison(
                "orchard",
                "orchard-x1",
                "copper oxide",
                0.01,
                ratio,
                new Quantity(-0.001, null, -0.029, 0.027, 0.95, 0.012),
                new ComparisonTests(new FTest(0.01, 1, 9, 0.92), new FTest(88.2, 2, 9, 0.0000012), 0.0000024),
                0.021,
                true,
                "1 % copper oxide raises the rate by 12 % (95 %: 10 % to 14 %) from 1.85 to 4.9 MPa; the exponents do not differ.",
                null);
    }

    private static Comparison notCompared() {
        return new Comparison(
                "orchard",
                "quince",
                null,
                null,
                List.of(),
                null,
                null,
                null,
                false,
                "Not compared.",
                "Quince sugar has no law.");
    }

    private static Plan plan() {
        List<PlannedThroat> ladder = new ArrayList<>();
        double[] throats = {11.5, 10.0, 8.9, 8.0, 7.3};
        for (double throat : throats) {
            double p = 1.55 * Math.pow(10.0 / throat, 2 / 0.67);
            boolean allowed = p * 1.18 * 1.09 < 3.77;
            ladder.add(new PlannedThroat(
                    Quantity.of(throat, "mm"),
                    List.of(
                            new DrillChoice("metric", throat + " mm", throat),
                            new DrillChoice("fraction", "25/64", 9.92)),
                    new Quantity(p, "MPa", p * 0.92, p * 1.09, 0.95, p * 0.04),
                    new Quantity(p * 1.18, "MPa", p * 1.18 * 0.92, p * 1.18 * 1.09, 0.95, p * 0.045),
                    new Quantity(8 / rate(p), "s", null, null, null, 0.05),
                    allowed,
                    allowed ? null : "The upper prediction is above 3.77 MPa, the case limit over the safety factor.",
                    throat == 11.5 ? List.of(0.42) : List.of(),
                    allowed ? 0.006 : null,
                    throat == 7.3
                            ? "Reaches beyond 4.9 MPa, the highest pressure of the law: an extrapolation."
                            : null));
        }
        return new Plan(
                "orchard",
                "2 segments, 40 mm by 12 mm by 60 mm",
                Quantity.of(3.77, "MPa"),
                ladder.get(1),
                ladder,
                Quantity.of(7.21, "mm"),
                Quantity.of(12.4, "mm"),
                4,
                new PlannedMotor(
                        List.of(0.0, 7.0, 14.0),
                        List.of(6200.0, 6500.0, 5100.0),
                        Quantity.of(95, "cm3"),
                        Quantity.of(1.81, "g/cm3"),
                        Quantity.of(870, "m/s"),
                        1.13,
                        Quantity.of(0.0986, "MPa"),
                        0.02,
                        0.02,
                        Quantity.of(4.9, "MPa")),
                "Drill 10.0 mm next: it narrows the interval of n from 0.016 to 0.012.",
                List.of("Proof-test the case. The prediction holds for this grain and this batch only."));
    }
}
