package io.burnlaw.report;

import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.FiredMotor;
import io.burnlaw.report.document.Firing.Rates;
import io.burnlaw.report.document.Firing.Throat;
import io.burnlaw.report.document.Firing.TimedSpan;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Firings, strands and points of the invented document. */
final class SampleFirings {

    static final double KELVIN_OF_THE_DAY = 294.15;

    private SampleFirings() {}

    static double rate(double p) {
        return p < 1.1 ? 1.2 * Math.pow(p, 0.45) : 3.9 * Math.pow(p, 0.33);
    }

    static Point point(String id, double p, double r, int segment, SplittableRandom random) {
        return new Point(
                id,
                id,
                id,
                null,
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

    static ClosureRow row(String id, double p, double r, SplittableRandom random) {
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

    static Firing firing(String id, String formulation, double p, double r, int seed) {
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
                null,
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
                        new Quantity(r * (flagged ? 1.031 : 1.006), "mm/s", null, null, null, r * 0.014),
                        new Quantity(r, "mm/s", null, null, null, r * 0.012),
                        flagged ? 0.034 : 0.009),
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
                new TraceHistory(time, pressure, null, time, simulated),
                null,
                new FiredMotor(
                        "bates, 2 segments, core diameter 14.00 mm, outer diameter 38.00 mm, segment length 62.00 mm",
                        Quantity.of(205, "g", 0.5),
                        seed == 2 ? null : Quantity.of(294.15, "K"),
                        Quantity.of(0.0986, "MPa"),
                        131.2,
                        140.6,
                        121.3,
                        2.1));
    }

    static Firing rejected() {
        return new Firing(
                "OR-09",
                "orchard",
                null,
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
                null,
                null,
                null);
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

    /** A strand burned in a vessel: a length over a time, and nothing that only a motor has. */
    static Firing strand() {
        return new Firing(
                "OS-1",
                "orchard",
                "strand",
                "used",
                "traces/OS-1.csv",
                null,
                List.of(),
                null,
                seconds(15.1, 0.06),
                null,
                Quantity.of(80, "mm"),
                Quantity.of(3.1, "MPa", 0.02),
                null,
                null,
                new Rates(Quantity.of(80 / 15.1, "mm/s", 0.03), null),
                null,
                null,
                null,
                null,
                null,
                List.of(
                        new BudgetLine("length", 0.0002, "m", 0.0025, 0.3),
                        new BudgetLine("time", 0.06, "s", 0.004, 0.7)),
                List.of(),
                vesselRecord(),
                new TimedSpan(seconds(0.9, 0.04), seconds(16.0, 0.04)),
                null);
    }

    /** A vessel whose pressure rises while the strand burns, and falls as its gas cools. */
    private static TraceHistory vesselRecord() {
        List<Double> time = new ArrayList<>();
        List<Double> pressure = new ArrayList<>();
        for (int i = 0; i <= 180; i++) {
            double t = 0.1 * i;
            time.add(t);
            pressure.add(t < 0.9 ? 3.0 : t < 16 ? 3.0 + 0.2 * (t - 0.9) / 15.1 : 3.2 - 0.03 * (t - 16));
        }
        return new TraceHistory(time, pressure, null, null, null);
    }
}
