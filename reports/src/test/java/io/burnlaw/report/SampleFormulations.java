package io.burnlaw.report;

import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.FasterAnswer;
import io.burnlaw.report.document.Formulation.LawWithout;
import io.burnlaw.report.document.Formulation.NotEstimated;
import io.burnlaw.report.document.Formulation.NotFitted;
import io.burnlaw.report.document.Formulation.OtherFit;
import io.burnlaw.report.document.Formulation.Stability;
import io.burnlaw.report.document.Formulation.TemperatureSensitivity;
import io.burnlaw.report.document.Formulation.Threshold;
import io.burnlaw.report.document.Formulation.ValidRange;
import io.burnlaw.report.document.Formulation.WithinBetween;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.CurvePoint;
import io.burnlaw.report.document.Law.LackOfFit;
import io.burnlaw.report.document.Law.MethodInterval;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Regimes;
import io.burnlaw.report.document.Regimes.Break;
import io.burnlaw.report.document.Regimes.RegimeEvidence;
import io.burnlaw.report.document.Regimes.Rival;
import java.util.ArrayList;
import java.util.List;

/** Propellants and laws of the invented document. */
final class SampleFormulations {

    private SampleFormulations() {}

    static Formulation orchard(List<Point> points, List<ClosureRow> rows) {
        Regimes regimes = new Regimes(
                "break",
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
                "Stay above 1.88 MPa: below, it may burn 3.0 times slower.",
                points,
                law(null, 2.6, 0.62, 0.6, 5.2, 8),
                null,
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
                null,
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
                                "extrapolated",
                                "Twice as fast needs 20.1 MPa, above the case limit."),
                        new FasterAnswer(3, null, "out-of-reach", "Three times as fast is out of reach.")),
                new TemperatureSensitivity(
                        new Quantity(0.0021, "1/K", 0.0011, 0.0031, 0.95, 0.0005),
                        new Quantity(0.0031, "1/K", null, null, null, 0.0008),
                        Quantity.of(SampleFirings.KELVIN_OF_THE_DAY, "K"),
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
                new ValidRange(
                        Quantity.of(0.6, "MPa"),
                        Quantity.of(5.2, "MPa"),
                        "The laws were measured from 0.6 to 5.2 MPa; beyond, nothing is known.",
                        List.of("the pressure for 2 times the rate")),
                List.of(new NotEstimated(
                        "bootstrap interval of the slow regime",
                        "Two firings have too few different draws.",
                        "Fire three more below 1 MPa.")),
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
                                "Keep the motor above the threshold, unless you want the slow burn.",
                                null)),
                List.of(
                        new LawWithout("OR-05", 1, 5.31, 0.341, 0.004, 0.011),
                        new LawWithout("OR-06", 1, 5.22, 0.352, -0.003, -0.002)));
    }

    static Formulation additive(List<Point> points) {
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
                null,
                points,
                law(null, 4.37, 0.329, 1.7, 4.9, 5),
                null,
                null,
                List.of(),
                null,
                null,
                null,
                List.of(),
                null,
                new Stability(0.349, "A steady pressure exists."),
                null,
                null,
                null,
                List.of(),
                List.of(),
                null);
    }

    static Formulation unfitted() {
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
                null,
                List.of(),
                null,
                new NotFitted(
                        "There is 1 usable point; a law needs 3.",
                        "Fire two more, one near 1.5 MPa and one near 4 MPa."),
                null,
                List.of(),
                null,
                null,
                null,
                List.of(),
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
                null,
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
                regime == null ? new LackOfFit(0.8, 4, 2, 0.61, 0.009) : null,
                curve);
    }
}
