package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.ballistics.SimulationSettings.Disturbance;
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

    @Test
    void aMotorTwiceAsLargeDoesTheSameInTwiceTheTime() {
        Motor small = motor(bates().withCoreOffset(0.0004), 0.012);
        Bates twice = new Bates(3, Measured.of(0.080), Measured.of(0.030), Measured.of(0.120)).withCoreOffset(0.0008);
        Motor large = motor(twice, 0.024);
        Ignition ignition = Ignition.usual(small).withDwell(0.1, 0.3);
        Ignition slower = new Ignition(8 * ignition.igniterMass(), 0.04, 0.04, 0.2, 0.3);
        SimulatedFiring one = ForwardSimulation.run(
                small,
                ForwardSimulationTest::law,
                SimulationSettings.of(ignition).sampledEach(0.001));
        SimulatedFiring other = ForwardSimulation.run(
                large, ForwardSimulationTest::law, SimulationSettings.of(slower).sampledEach(0.002));
        for (int i = 0; i < one.size(); i++) {
            // similarity is exact: both integrators take the same steps but for rounding
            assertThat(other.pressure(i)).isCloseTo(one.pressure(i), within(1e-6 * one.pressure(i)));
        }
        assertThat(other.lastBurnout()).isCloseTo(2 * one.lastBurnout(), within(1e-6));
    }

    @Test
    void theWebAtTheSamplesIsTheIntegralOfTheRate() {
        Motor motor = motor(bates(), 0.012);
        SimulatedFiring firing = ForwardSimulation.run(
                motor,
                ForwardSimulationTest::law,
                SimulationSettings.of(Ignitions.instantaneous()).sampledEach(0.0002));
        double web = 0;
        for (int i = 1; firing.time(i) < firing.lastBurnout(); i++) {
            web += 0.0001 * (law(firing.pressure(i)) + law(firing.pressure(i - 1)));
            // the trapezoidal rule at 0.2 ms through the first rise
            assertThat(firing.web(i)).isCloseTo(web, within(2e-6));
        }
    }

    @Test
    void tighterStepsChangeNothing() {
        Motor motor = motor(bates().withCoreOffset(0.0004), 0.012);
        SimulationSettings usual = SimulationSettings.of(Ignition.usual(motor)).sampledEach(0.002);
        SimulationSettings tight = new SimulationSettings(usual.ignition(), 0.002, 300, 1e-10, Disturbance.none());
        SimulatedFiring loose = ForwardSimulation.run(motor, ForwardSimulationTest::law, usual);
        SimulatedFiring exact = ForwardSimulation.run(motor, ForwardSimulationTest::law, tight);
        for (int i = 0; i < Math.min(loose.size(), exact.size()); i++) {
            // 1e-4: kinks where pieces burn through and between the samples of the tail-off
            assertThat(loose.pressure(i)).isCloseTo(exact.pressure(i), within(1e-4 * exact.maximumPressure()));
        }
        assertThat(loose.lastBurnout()).isCloseTo(exact.lastBurnout(), within(1e-5));
    }

    @Test
    void anUnevenWebBurnsThroughFromTheThinToTheThickSide() {
        SimulatedFiring firing =
                ForwardSimulation.run(motor(bates().withCoreOffset(0.0005), 0.012), ForwardSimulationTest::law);
        assertThat(firing.firstBurnout()).isLessThan(firing.meanBurnout());
        assertThat(firing.meanBurnout()).isLessThan(firing.lastBurnout());
        double rate = 0.001 / (firing.lastBurnout() - firing.firstBurnout());
        assertThat(rate).isBetween(law(101325), law(firing.maximumPressure()));
    }

    @Test
    void anEvenWebBurnsOutAllAtOnce() {
        SimulatedFiring firing = ForwardSimulation.run(motor(bates(), 0.012), ForwardSimulationTest::law);
        // 1e-6: both lie within a billionth of the web of the break
        assertThat(firing.meanBurnout()).isCloseTo(firing.lastBurnout(), within(1e-6));
    }

    @Test
    void aLawThatJumpsDownHoldsTheMotorAtTheJump() {
        Motor motor = motor(bates(), 0.012);
        SimulatedFiring firing = ForwardSimulation.run(motor, p -> p < 0.8e6 ? 6e-3 : 3e-3);
        assertThat(firing.outcome()).isEqualTo(SimulatedFiring.Outcome.BURNED_OUT);
        // a step of a fiftieth of the filling time overshoots by that share of the jump
        assertThat(firing.maximumPressure()).isCloseTo(0.8e6, within(0.02 * 0.8e6));
    }

    @Test
    void aBurstEndsTheFireWithWebLeft() {
        Motor motor = motor(bates(), 0.010);
        SimulatedFiring firing = ForwardSimulation.run(
                motor,
                ForwardSimulationTest::law,
                SimulationSettings.of(Ignition.usual(motor)).disturbedBy(Disturbance.burst(1.0, 30)));
        assertThat(firing.outcome()).isEqualTo(SimulatedFiring.Outcome.WENT_OUT);
        assertThat(firing.web(firing.size() - 1)).isLessThan(motor.grain().web().value());
        assertThat(firing.time(firing.size() - 1)).isBetween(1.0, 1.05);
        assertThat(firing.lastBurnout()).isInfinite();
    }

    @Test
    void aPassingBlockageRaisesThePressureForItsTime() {
        Motor motor = motor(bates(), 0.010);
        SimulationSettings clean = SimulationSettings.of(Ignition.usual(motor)).sampledEach(0.001);
        SimulatedFiring calm = ForwardSimulation.run(motor, ForwardSimulationTest::law, clean);
        SimulatedFiring blocked = ForwardSimulation.run(
                motor, ForwardSimulationTest::law, clean.disturbedBy(Disturbance.blockage(1.0, 0.1, 0.2)));
        assertThat(blocked.pressure(940)).isCloseTo(calm.pressure(940), within(1.0));
        assertThat(blocked.pressure(1005)).isGreaterThan(1.15 * calm.pressure(1005));
        assertThat(blocked.pressure(1200)).isCloseTo(calm.pressure(1200), within(0.02 * calm.pressure(1200)));
    }

    @Test
    void aThroatThatWearsLowersThePressureTowardTheEnd() {
        Motor kept = motor(bates(), 0.010);
        Motor worn = kept.withNozzle(kept.nozzle().withThroat(0.010, 0.0104));
        SimulatedFiring one = ForwardSimulation.run(kept, ForwardSimulationTest::law);
        SimulatedFiring other = ForwardSimulation.run(worn, ForwardSimulationTest::law);
        assertThat(other.lastBurnout()).isGreaterThan(one.lastBurnout());
        assertThat(other.maximumPressure()).isLessThan(one.maximumPressure());
    }

    @Test
    void aPropellantThatDoesNotBurnIsGivenUpAndSaysSo() {
        SimulatedFiring firing = ForwardSimulation.run(motor(bates(), 0.012), p -> 0);
        assertThat(firing.outcome()).isEqualTo(SimulatedFiring.Outcome.WENT_OUT);
        SimulatedFiring slow = ForwardSimulation.run(
                motor(bates(), 0.012),
                p -> 1e-5,
                SimulationSettings.of(Ignitions.instantaneous()).withTimeLimit(3));
        assertThat(slow.outcome()).isEqualTo(SimulatedFiring.Outcome.STILL_BURNING);
        assertThat(slow.meanBurnout()).isInfinite();
    }
}
