package io.burnlaw.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Quantity;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FormulaLineTest {

    private static final double INCH = 25.4;

    /** NIST Guide to the SI, SP 811 (2008), appendix B: 1 psi is 6.894757 kPa. */
    private static final double PSI = 6.894757e-3;

    @Test
    void whatStandsOnThePageGivesTheLawBackOverItsRangeInEachPairOfUnits() {
        Random random = new Random(20261127);
        for (int i = 0; i < 2000; i++) {
            double low = 0.1 + 3 * random.nextDouble();
            double high = low * (1.05 + 20 * random.nextDouble());
            double n = -0.5 + 1.7 * random.nextDouble();
            double a = 0.5 + 15 * random.nextDouble();
            List<FormulaLine> lines = FormulaLine.cited(law(a, n, low, high));
            assertThat(lines).extracting(FormulaLine::key).containsExactly("mpa", "bar", "psi", "pa");
            for (FormulaLine line : lines) {
                for (double p : new double[] {low, Math.sqrt(low * high), high}) {
                    // 0.05 %, and the last digit of the psi above
                    assertThat(rate(line, p) / (a * Math.pow(p, n)))
                            .as("%s of a = %s, n = %s from %s to %s MPa", line, a, n, low, high)
                            .isCloseTo(1, within(5.01e-4));
                }
            }
        }
    }

    @Test
    void aCopyIsThePairOnThePageWithUnitsAndRange() {
        FormulaLine line = FormulaLine.of(law(4.168, -0.365, 0.95, 4.3)).get(0);
        assertThat(line.copied())
                .isEqualTo("r = 4.1680 * P^(-0.3650)   (r in mm/s, P absolute in MPa, 0.95 to 4.3 MPa)");
        assertThat(line.exponent()).isEqualTo("\u22120.3650");
    }

    /** In mm/s, at a pressure in MPa. */
    private static double rate(FormulaLine line, double pressure) {
        double exponent = Double.parseDouble(line.exponent().replace('\u2212', '-'));
        double in = switch (line.key()) {
            case "mpa" -> pressure;
            case "bar" -> pressure * 10;
            case "psi" -> pressure / PSI;
            default -> pressure * 1e6;
        };
        double rate = Double.parseDouble(line.coefficient()) * Math.pow(in, exponent);
        return switch (line.key()) {
            case "psi" -> rate * INCH;
            case "pa" -> rate * 1000;
            default -> rate;
        };
    }

    private static Law law(double a, double n, double low, double high) {
        return new Law(
                null,
                Quantity.of(a, "mm/s"),
                Quantity.of(n, null),
                Quantity.of(2, "MPa"),
                Quantity.of(a * Math.pow(2, n), "mm/s"),
                List.of(List.of(1e-4, 0.0), List.of(0.0, 1e-4)),
                null,
                Quantity.of(low, "MPa"),
                Quantity.of(high, "MPa"),
                0.01,
                8,
                10,
                "student-t",
                "proportional",
                "none",
                List.of(
                        pair("bar", "mm/s", a * Math.pow(0.1, n), n),
                        pair("[psi]", "[in_i]/s", a / INCH * Math.pow(PSI, n), n),
                        pair("Pa", "m/s", a / 1000 * Math.pow(1e-6, n), n)),
                List.of(),
                null,
                List.of());
    }

    private static UnitPair pair(String pressure, String rate, double a, double n) {
        return new UnitPair(pressure, rate, a, null, null, n, List.of());
    }
}
