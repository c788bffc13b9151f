package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import org.junit.jupiter.api.Test;

class GasAndNozzleTest {

    private static final double AMBIENT = 101325;

    /** R [J/(mol K)], exact since the SI of 2019. */
    private static final double MOLAR_GAS_CONSTANT = 8.31446261815324;

    /** c* of a flame: sqrt(R T / M) over the flow factor of the code. */
    private static double velocity(double temperature, double molarMass, double specificHeatRatio) {
        double flowFactor = new Gas(1, specificHeatRatio).flowFactor();
        return Math.sqrt(MOLAR_GAS_CONSTANT * temperature / molarMass) / flowFactor;
    }

    @Test
    @Oracle(
            value = "Potassium nitrate and sorbitol: c* 909 m/s from 1600 K, 39.86 kg/kmol, k 1.1361"
                    + " (R. Nakka, theory pages)",
            agreement = "to the printed digits")
    void characteristicVelocityFromTheFlame() {
        // the page computes with R = 8314 J/(kmol K), 6e-5 below today's
        assertThat(velocity(1600, 0.03986, 1.1361)).isCloseTo(909, within(0.5));
    }

    @Test
    @Oracle(
            value = "c* of three potassium nitrate and sugar propellants from flame temperature, molar mass and k",
            agreement = "0.05 m/s",
            fromMemory = true)
    void characteristicVelocityOfSugarPropellants() {
        for (String[] row : ReferenceTable.rows("sugar_properties.csv")) {
            if (row[2].isEmpty()) {
                continue;
            }
            double found =
                    velocity(Double.parseDouble(row[2]), Double.parseDouble(row[3]) / 1000, Double.parseDouble(row[4]));
            // 0.05 m/s: R = 8314 against 8314.46, and half of the last printed digit
            assertThat(found).isCloseTo(Double.parseDouble(row[6]), within(0.05));
        }
    }

    @Test
    @Oracle(
            value = "NACA Report 1135 (1953), table II, k = 1.4: p/pt and A/A* at Mach 1.5, 2 and 3",
            agreement = "to the printed digits",
            fromMemory = true)
    void areaAndPressureRatioOfASupersonicNozzle() {
        Gas air = new Gas(700, 1.4);
        // rounding of the printed area ratios, carried through d ln(p) / d ln(A)
        assertThat(ThrustCoefficient.of(1.176, air).exitPressureRatio()).isCloseTo(0.2724, within(0.0005));
        assertThat(ThrustCoefficient.of(1.6875, air).exitPressureRatio()).isCloseTo(0.1278, within(0.00005));
        assertThat(ThrustCoefficient.of(4.235, air).exitPressureRatio()).isCloseTo(0.02722, within(0.00001));
    }

    @Test
    @Oracle(
            value = "Gamma for k = 1.1308, 1.1361, 1.133, 1.2, 1.25, computed apart from this code (mpmath)",
            agreement = "to six digits")
    void flowFactor() {
        double[][] table = {{1.1308, 0.634739}, {1.1361, 0.635821}, {1.133, 0.635188}, {1.2, 0.648531}, {1.25, 0.658065}
        };
        for (double[] row : table) {
            assertThat(new Gas(900, row[0]).flowFactor()).isCloseTo(row[1], within(5e-7));
        }
    }

    @Test
    void theVacuumThrustCoefficientTendsToTheLimitOfFullExpansion() {
        Gas gas = new Gas(1500, 1.2);
        double limit = gas.flowFactor() * Math.sqrt(2 * 1.2 / 0.2);
        // exit pressure and area fall and rise so that their product vanishes as A^(1-k): 1e6^-0.2 = 6 %
        assertThat(ThrustCoefficient.of(1e6, gas).at(5e6, 0)).isBetween(0.93 * limit, limit);
    }

    @Test
    void thrustIsLargestWhereTheExitPressureIsTheAmbientPressure() {
        Gas gas = new Gas(900, 1.13);
        double best = ThrustCoefficient.of(8, gas).exitPressureRatio();
        double pressure = AMBIENT / best;
        double matched = ThrustCoefficient.of(8, gas).at(pressure, AMBIENT);
        assertThat(matched).isGreaterThan(ThrustCoefficient.of(7, gas).at(pressure, AMBIENT));
        assertThat(matched).isGreaterThan(ThrustCoefficient.of(9, gas).at(pressure, AMBIENT));
    }

    @Test
    void flowAndThrustAreContinuousWhereTheyChokeAndVanishAtRest() {
        Gas gas = new Gas(900, 1.13);
        double choking = AMBIENT / gas.criticalRatio();
        double area = 5e-5;
        double below = Nozzle.massFlow(choking * (1 - 1e-9), AMBIENT, area, gas);
        double above = Nozzle.massFlow(choking * (1 + 1e-9), AMBIENT, area, gas);
        assertThat(below).isCloseTo(above, within(1e-8 * above));
        assertThat(above).isCloseTo(choking * area / 900, within(1e-8 * above));
        ThrustCoefficient coefficient = ThrustCoefficient.of(6, gas);
        assertThat(coefficient.at(choking * (1 - 1e-9), AMBIENT))
                .isCloseTo(coefficient.at(choking * (1 + 1e-9), AMBIENT), within(1e-6));
        assertThat(Nozzle.massFlow(AMBIENT, AMBIENT, area, gas)).isZero();
        assertThat(coefficient.at(AMBIENT, AMBIENT)).isZero();
    }

    @Test
    void flowAndThrustRiseWithPressureAllTheWay() {
        Gas gas = new Gas(900, 1.13);
        ThrustCoefficient coefficient = ThrustCoefficient.of(6, gas);
        double flow = 0;
        double thrust = 0;
        for (double pressure = AMBIENT; pressure < 1e7; pressure *= 1.003) {
            double nextFlow = Nozzle.massFlow(pressure, AMBIENT, 1, gas);
            double nextThrust = coefficient.at(pressure, AMBIENT) * pressure;
            assertThat(nextFlow).isGreaterThanOrEqualTo(flow);
            assertThat(nextThrust).isGreaterThanOrEqualTo(thrust);
            flow = nextFlow;
            thrust = nextThrust;
        }
    }

    @Test
    void slowFlowIsThatOfAnIncompressibleFluid() {
        Gas gas = new Gas(900, 1.13);
        double over = 0.005 * AMBIENT;
        double bernoulli = Math.sqrt(2 * gas.density(AMBIENT + over) * over);
        // compressibility at half a per cent of overpressure: about a quarter of it
        assertThat(Nozzle.massFlow(AMBIENT + over, AMBIENT, 1, gas)).isCloseTo(bernoulli, within(0.005 * bernoulli));
    }
}
