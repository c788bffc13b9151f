package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import org.junit.jupiter.api.Test;

class ForwardSimulationTest {

    private static final Gas GAS = new Gas(900, 1.13);

    static Motor motor(Grain grain, double throat) {
        return new Motor(grain, 1790, GAS, new Nozzle(throat), Motor.freeVolume(grain, Double.NaN), 101325);
    }

    static Bates bates() {
        return new Bates(3, Measured.of(0.040), Measured.of(0.015), Measured.of(0.060));
    }

    private static double law(double pressure) {
        return 5e-3 * Math.pow(pressure / 1e6, 0.35);
    }

    @Test
    void massThatLeavesIsMassThatWasThere() {
        Motor motor = motor(bates(), 0.012);
        SimulationSettings settings = SimulationSettings.of(Ignition.usual(motor));
        SimulatedFiring firing = ForwardSimulation.run(motor, ForwardSimulationTest::law, settings);
        double before = motor.density() * motor.grain().volume(0)
                + settings.ignition().igniterMass()
                + GAS.density(101325) * motor.freeVolume();
        double left = GAS.density(firing.pressure(firing.size() - 1))
                * (motor.freeVolume() + motor.grain().volume(0));
        assertThat(firing.outcome()).isEqualTo(SimulatedFiring.Outcome.BURNED_OUT);
        // 1e-6 is the tolerance of a step; the errors of some hundred steps cancel in part
        assertThat(firing.expelledMass() + left).isCloseTo(before, within(1e-5 * before));
    }
}
