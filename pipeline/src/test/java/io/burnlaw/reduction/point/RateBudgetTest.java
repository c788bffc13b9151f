package io.burnlaw.reduction.point;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.burnlaw.Oracle;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class RateBudgetTest {

    @Test
    @Oracle(
            value =
                    "JCGM 100:2008, annex H.1, calibration of an end gauge: u(l) = 32 nm, of which 25 nm from the standard,"
                            + " 9.7 nm from the comparison and 16.6 nm from the difference of temperatures",
            agreement = "to the printed digits")
    void contributionsTriedOneByOneAddUpToTheGaugeOfTheGuide() {
        double[] x = {50_000_623, 215, 0, -0.1, 11.5e-6, 0};
        double[] u = {25, 9.7, 0.58e-6, 0.41, 1.2e-6, 0.029};
        String[] names = {"standard", "comparison", "expansion difference", "temperature", "expansion", "gradient"};
        ToDoubleFunction<double[]> length = v -> v[0] + v[1] - v[0] * (v[2] * v[3] + v[4] * v[5]);
        double value = length.applyAsDouble(x);
        RateBudget budget = new RateBudget();
        for (int i = 0; i < x.length; i++) {
            double[] tried = x.clone();
            tried[i] += u[i];
            budget.add(names[i], u[i], "1", length.applyAsDouble(tried) / value - 1, 0);
        }
        var lines = budget.lines();
        assertAll(
                // printed as 32 nm
                () -> assertEquals(32, budget.relativeStd() * value, 0.5),
                () -> assertEquals("standard", lines.get(0).source()),
                () -> assertEquals(25, lines.get(0).contribution() * value, 0.05),
                () -> assertEquals("gradient", lines.get(1).source()),
                // 16.6 nm is the product of rounded factors: 50 mm x 11.5e-6 x 0.029 = 16.68 nm
                () -> assertEquals(16.6, lines.get(1).contribution() * value, 0.1),
                () -> assertEquals("comparison", lines.get(2).source()),
                () -> assertEquals(9.7, lines.get(2).contribution() * value, 0.05),
                () -> assertEquals(
                        1, lines.stream().mapToDouble(BudgetLine::share).sum(), 1e-12));
    }
}
