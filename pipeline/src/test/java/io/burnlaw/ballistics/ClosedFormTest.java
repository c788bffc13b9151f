package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.ballistics.SimulationSettings.Disturbance;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.grain.Tube;
import io.burnlaw.quantity.Measured;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The chamber model against solutions that need no computer. */
class ClosedFormTest {

    private static final Gas GAS = new Gas(1500, 1.2);
    private static final double THROAT = 0.008;
    private static final double AREA = Math.PI / 4 * THROAT * THROAT;
    private static final double SURFACE = 250 * AREA;
    private static final double VOLUME = 1e-4;
    private static final double FILLING_TIME = VOLUME / (AREA * 1500 * GAS.flowFactor() * GAS.flowFactor());

    /** Makes the same gas from a surface a billionth as large of a propellant a billion times as dense: V stays, and
     * the gas density drops out. */
    private static Motor motor(double web) {
        double diameter = Math.sqrt(4 / Math.PI * SURFACE * 1e-9);
        EndBurner grain = new EndBurner(Measured.of(diameter), Measured.of(web));
        return new Motor(grain, 1750e9, GAS, new Nozzle(THROAT), VOLUME, 0);
    }

    private static SimulationSettings settings(double interval) {
        return new SimulationSettings(Ignitions.instantaneous(), interval, 1, 1e-10, Disturbance.none());
    }

    @Test
    @Oracle(
            value = "Chamber filling at constant surface, throat and volume: solution of a Bernoulli equation,"
                    + " 11 times, checked against SciPy DOP853",
            agreement = "relative 1e-7")
    void theChamberFillsByTheClosedForm() {
        double interval = 1e-6;
        SimulatedFiring firing = ForwardSimulation.run(
                motor(1),
                p -> 5e-3 * StrictMath.pow(p / 1e6, 0.35),
                settings(interval).withTimeLimit(0.08));
        List<String[]> rows = ReferenceTable.rows("chamber_fill_closed_form.csv");
        // the table begins at 101325 Pa, the simulation with an empty chamber: the law knows no clock, so the clocks
        // are set by the third row, after the first steps out of the vacuum, which are of the shortest length allowed
        double[] third = {Double.parseDouble(rows.get(2)[1]), Double.parseDouble(rows.get(2)[2])};
        double shift = timeOf(firing, third[1]) - third[0];
        for (String[] row : rows.subList(2, rows.size())) {
            double expected = Double.parseDouble(row[2]);
            double found = pressureAt(firing, shift + Double.parseDouble(row[1]));
            // 1e-7: samples 1 microsecond apart are joined by straight lines, the table has 11 digits
            assertThat(found).isCloseTo(expected, within(1e-7 * expected));
        }
    }

    @Test
    @Oracle(
            value =
                    "Blow-down of a chamber after sudden burnout, choked, constant temperature: p0 exp(-t/tau), 8 times",
            agreement = "relative 1e-7")
    void theChamberEmptiesByTheClosedForm() {
        double rate = 6e6 * AREA / 1500 / (1750 * SURFACE);
        SimulatedFiring firing = ForwardSimulation.run(motor(rate * 0.2), p -> rate, settings(1e-6));
        assertThat(firing.lastBurnout()).isCloseTo(0.2, within(1e-9));
        for (String[] row : ReferenceTable.rows("tailoff_closed_form.csv")) {
            double expected = 1e6 * Double.parseDouble(row[1]);
            double found = pressureAt(firing, firing.lastBurnout() + Double.parseDouble(row[0]) * FILLING_TIME);
            // 1e-7: samples 1 microsecond apart, and the table's ten digits after five filling times
            assertThat(found).isCloseTo(expected, within(1e-7 * expected));
        }
    }

    @Test
    @Oracle(
            value = "Worked example on a bore of 1 m by 10 m at 5 MPa, a = 5.5 mm/s at 1 MPa, n = 0.4:"
                    + " 10.47 mm/s and 559 kg/s (R. Braeunig, Basics of Space Flight)",
            agreement = "to the printed digits",
            fromMemory = true)
    void aBoreGivesTheMassFlowOfTheWorkedExample() {
        double rate = 5.5e-3 * Math.pow(5, 0.4);
        Tube bore = new Tube(Measured.of(2), Measured.of(1), Measured.of(10), 0);
        assertThat(rate).isCloseTo(10.47e-3, within(0.005e-3));
        assertThat(bore.surface(0) * rate * 1700).isCloseTo(559, within(0.5));
    }

    @Test
    @Oracle(
            value = "Grain sizing example of Sutton and Biblarz (2001), chapter 11: 1000 psi, 1.30 in2,"
                    + " c* 4000 ft/s: 10.5 lbm/s",
            agreement = "to the printed digits",
            fromMemory = true)
    void aChokedThroatGivesTheMassFlowOfTheWorkedExample() {
        double flow =
                Nozzle.massFlow(1000 * 6894.757293168, 101325, 1.30 * 0.0254 * 0.0254, new Gas(4000 * 0.3048, 1.2));
        assertThat(flow / 0.45359237).isCloseTo(10.5, within(0.05));
    }

    private static double timeOf(SimulatedFiring firing, double pressure) {
        int i = 1;
        while (firing.pressure(i) < pressure) {
            i++;
        }
        double share = (pressure - firing.pressure(i - 1)) / (firing.pressure(i) - firing.pressure(i - 1));
        return firing.time(i - 1) + share * (firing.time(i) - firing.time(i - 1));
    }

    private static double pressureAt(SimulatedFiring firing, double time) {
        int i = (int) Math.floor(time / 1e-6);
        double share = (time - firing.time(i)) / (firing.time(i + 1) - firing.time(i));
        return firing.pressure(i) + share * (firing.pressure(i + 1) - firing.pressure(i));
    }
}
