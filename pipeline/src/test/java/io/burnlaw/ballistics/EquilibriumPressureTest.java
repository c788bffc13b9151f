package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.ballistics.EquilibriumPressure.Equilibrium;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.quantity.Measured;
import java.util.List;
import org.junit.jupiter.api.Test;

class EquilibriumPressureTest {

    private static final double PSI = 6894.757293168361;
    private static final double STANDARD_GRAVITY_US = 32.1740486;

    @Test
    @Oracle(
            value = "The same motor in SI and in US units, and two sugar motors: P = (Kn rho a c*)^(1/(1-n)) by hand",
            agreement = "to the printed digits")
    void closedFormInBothSystemsOfUnits() {
        List<String[]> rows = ReferenceTable.rows("equilibrium_pressure_units.csv");
        double si = EquilibriumPressure.ofPowerLaw(250, 1750, 3.971641173621e-05, 0.35, 1500);
        assertThat(si).isCloseTo(Double.parseDouble(rows.get(0)[6].replace(" Pa", "")), within(0.01));
        // pounds force per square inch come out when c* is divided by g_c
        double us = EquilibriumPressure.ofPowerLaw(
                250, 0.06322276102, 0.03448402344, 0.35, 12 * 4921.259843 / (12 * STANDARD_GRAVITY_US));
        assertThat(us).isCloseTo(902.3762650, within(1e-4));
        assertThat(us * PSI).isCloseTo(si, within(1e-6 * si));
        double sugar = EquilibriumPressure.ofPowerLaw(200, 1889, 8.26e-3 * Math.pow(1e6, -0.319), 0.319, 919);
        assertThat(sugar).isCloseTo(4.697758e6, within(1.0));
        double real = EquilibriumPressure.ofPowerLaw(200, 1794.55, 8.26e-3 * Math.pow(1e6, -0.319), 0.319, 873.05);
        assertThat(real).isCloseTo(4.040806e6, within(1.0));
    }

    @Test
    void theSearchFindsTheClosedFormWhereGasDensityDoesNotCount() {
        Gas gas = new Gas(1500, 1.2);
        EndBurner grain = new EndBurner(Measured.of(0.1), Measured.of(0.1));
        Motor motor = new Motor(grain, 1750e6, gas, new Nozzle(0.008), 1e-4, 101325);
        double area = motor.nozzle().throatArea();
        List<Equilibrium> found =
                EquilibriumPressure.of(250e-6 * area, area, motor, p -> 5e-3 * StrictMath.pow(p / 1e6, 0.35), 1e8);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).stable()).isTrue();
        // 1e-8: a millionth of the gas density term is left
        assertThat(found.get(0).pressure()).isCloseTo(6221665.345, within(0.1));
    }

    @Test
    void aSlowRegimeBelowAThresholdGivesThreeEquilibria() {
        Motor motor = slowMotor();
        List<Equilibrium> found =
                EquilibriumPressure.of(motor, 0, EquilibriumPressureTest::slowBelowOneMegapascal, 1e8);
        assertThat(found).extracting(Equilibrium::stable).containsExactly(true, false, true);
        assertThat(found.get(1).pressure()).isCloseTo(1e6, within(1.0));
        assertThat(found.get(0).pressure()).isLessThan(1e6);
        assertThat(found.get(2).pressure()).isGreaterThan(1e6);
    }

    @Test
    void theIgniterDecidesWhichOfThemAMotorTakes() {
        Motor motor = slowMotor();
        List<Equilibrium> found =
                EquilibriumPressure.of(motor, 0, EquilibriumPressureTest::slowBelowOneMegapascal, 1e8);
        Ignition weak = Ignition.usual(motor);
        Ignition strong = new Ignition(12 * weak.igniterMass(), 0.02, 0.02, 0, 0);
        double slow = settled(motor, weak);
        double fast = settled(motor, strong);
        // an end burner keeps its surface: it settles where production and flow balance
        assertThat(slow).isCloseTo(found.get(0).pressure(), within(1e-4 * slow));
        assertThat(fast).isCloseTo(found.get(2).pressure(), within(1e-4 * fast));
    }

    private static double settled(Motor motor, Ignition ignition) {
        SimulatedFiring firing = ForwardSimulation.run(
                motor, EquilibriumPressureTest::slowBelowOneMegapascal, SimulationSettings.of(ignition));
        int i = 0;
        while (firing.web(i) < 0.9 * motor.grain().burnout()) {
            i++;
        }
        return firing.pressure(i);
    }

    private static Motor slowMotor() {
        EndBurner grain = new EndBurner(Measured.of(0.08), Measured.of(0.05));
        return new Motor(grain, 1800, new Gas(900, 1.13), new Nozzle(0.0054), 3e-4, 101325);
    }

    private static double slowBelowOneMegapascal(double pressure) {
        double fast = 5e-3 * StrictMath.pow(pressure / 1e6, 0.3);
        return pressure < 1e6 ? fast / 4 : fast;
    }
}
