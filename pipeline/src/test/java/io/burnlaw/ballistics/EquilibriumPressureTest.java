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

    @Test
    @Oracle(
            value = "The same motor in SI and in US units, and two sugar motors: P = (Kn rho a c*)^(1/(1-n)) by hand",
            agreement = "to the printed digits")
    void theSearchFindsTheClosedFormWhereGasDensityDoesNotCount() {
        List<String[]> rows = ReferenceTable.rows("equilibrium_pressure_units.csv");
        // 0.1 Pa: a millionth of the gas density term is left
        double si = searched(250, 1750, 3.971641173621e-05, 0.35, 1500);
        assertThat(si).isCloseTo(Double.parseDouble(rows.get(0)[6].replace(" Pa", "")), within(0.1));
        assertThat(si).isCloseTo(902.3762650 * PSI, within(1e-6 * si));
        assertThat(searched(200, 1889, 8.26e-3 * Math.pow(1e6, -0.319), 0.319, 919))
                .isCloseTo(4.697758e6, within(1.0));
        assertThat(searched(200, 1794.55, 8.26e-3 * Math.pow(1e6, -0.319), 0.319, 873.05))
                .isCloseTo(4.040806e6, within(1.0));
    }

    /** A millionfold density on a millionth of the surface: the gas in the chamber counts for nothing. */
    private static double searched(double kn, double density, double coefficient, double exponent, double velocity) {
        EndBurner grain = new EndBurner(Measured.of(0.1), Measured.of(0.1));
        Motor motor = new Motor(grain, 1e6 * density, new Gas(velocity, 1.2), new Nozzle(0.008), 1e-4, 101325);
        double area = motor.nozzle().throatArea();
        List<Equilibrium> found = EquilibriumPressure.of(
                1e-6 * kn * area, area, motor, p -> coefficient * StrictMath.pow(p, exponent), 1e8);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).stable()).isTrue();
        return found.get(0).pressure();
    }

    private static List<Equilibrium> atStart(Motor motor) {
        return EquilibriumPressure.of(
                motor.grain().surface(0),
                motor.nozzle().throatArea(),
                motor,
                EquilibriumPressureTest::slowBelowOneMegapascal,
                1e8);
    }

    @Test
    void aSlowRegimeBelowAThresholdGivesThreeEquilibria() {
        Motor motor = slowMotor();
        List<Equilibrium> found = atStart(motor);
        assertThat(found).extracting(Equilibrium::stable).containsExactly(true, false, true);
        assertThat(found.get(1).pressure()).isCloseTo(1e6, within(1.0));
        assertThat(found.get(0).pressure()).isLessThan(1e6);
        assertThat(found.get(2).pressure()).isGreaterThan(1e6);
    }

    @Test
    void theIgniterDecidesWhichOfThemAMotorTakes() {
        Motor motor = slowMotor();
        List<Equilibrium> found = atStart(motor);
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
