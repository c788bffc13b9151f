package io.burnlaw.report;

import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Comparison.ComparisonTests;
import io.burnlaw.report.document.Comparison.FTest;
import io.burnlaw.report.document.Comparison.RatioPoint;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.DrillChoice;
import io.burnlaw.report.document.Plan.PlannedAnswer;
import io.burnlaw.report.document.Plan.PlannedMotor;
import io.burnlaw.report.document.Plan.PlannedThroat;
import io.burnlaw.report.document.Plan.ThroatRemark;
import io.burnlaw.report.document.Plan.ThroatTable;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;

/** Comparisons and the plan of the invented document. */
final class SamplePlans {

    private SamplePlans() {}

    static Comparison comparison() {
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

    static Comparison notCompared() {
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

    static Plan plan() {
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
                    new Quantity(8 / SampleFirings.rate(p), "s", null, null, null, 0.05),
                    allowed,
                    allowed ? null : "The upper prediction is above 3.77 MPa, the case limit over the safety factor.",
                    throat == 11.5 ? List.of(0.42) : List.of(),
                    allowed ? 0.006 : null,
                    throat == 7.3 ? "Extrapolated: above 4.9 MPa, the highest pressure of the law." : null));
        }
        return new Plan(
                "orchard",
                "2 segments, 40 mm by 12 mm by 60 mm",
                Quantity.of(3.77, "MPa"),
                "the case limit of 5.50 MPa over a safety factor of 1.5",
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
                        Quantity.of(1.1, "MPa"),
                        null,
                        Quantity.of(4.9, "MPa"),
                        12.0,
                        4.0,
                        List.of()),
                "Drill 10.0 mm next: it narrows the interval of n from 0.016 to 0.012.",
                List.of("Proof-test the case. The prediction holds for this grain and this batch only."),
                List.of(
                        new PlannedAnswer("a throat of 12.0 mm", ladder.get(0), null, null),
                        new PlannedAnswer("a mean of 9 MPa absolute", null, null, "It is above 3.77 MPa.")),
                table(),
                null);
    }

    /** By the closed form of the ladder, finely. */
    private static ThroatTable table() {
        List<Double> throat = IntStream.rangeClosed(0, 30)
                .mapToObj(i -> 7.21 * Math.pow(13.2 / 7.21, i / 30.0))
                .toList();
        Function<DoubleUnaryOperator, List<Double>> pressures = of -> throat.stream()
                .map(each -> of.applyAsDouble(1.55 * Math.pow(10.0 / each, 2 / 0.67)))
                .toList();
        return new ThroatTable(
                0.95,
                throat,
                throat.stream().map(each -> 4 * 6500 / (Math.PI * each * each)).toList(),
                pressures.apply(p -> p),
                pressures.apply(p -> p * 0.92),
                pressures.apply(p -> p * 1.09),
                pressures.apply(p -> p * 1.18),
                pressures.apply(p -> p * 1.18 * 0.92),
                pressures.apply(p -> p * 1.18 * 1.09),
                pressures.apply(p -> 8 / SampleFirings.rate(p)),
                List.of(new ThroatRemark(12.4, 13.2, "May fall into the slow regime below 1.10 MPa.")),
                "No smaller throat: the upper prediction of the peak would be above 3.77 MPa, the case limit over the safety factor.",
                "Larger throats are not shown: the motor would be in the slow regime.");
    }
}
