package io.burnlaw.reduction.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Nozzle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChokedFlowFractionTest {

    @ParameterizedTest
    @ValueSource(doubles = {1.1, 1.13, 1.2, 1.25, 1.4})
    void agreesWithTheNozzleOfTheChamberModel(double ratio) {
        ChokedFlowFraction flow = new ChokedFlowFraction(ratio, 1e5);
        Gas gas = new Gas(900, ratio);
        for (double p = 1.005e5; p < 4e5; p *= 1.003) {
            double expected = Nozzle.massFlow(p, 1e5, 1e-4, gas) / (1e-4 / 900);
            // 2e-4 of the pressure: linear between the entries of the table
            assertEquals(expected, flow.drivingPressure(p), 2e-4 * p);
        }
    }

    @Test
    void noiseAboutAmbientDrivesNothing() {
        ChokedFlowFraction flow = new ChokedFlowFraction(1.13, 1e5);
        for (double d = 10; d < 3e5; d *= 1.5) {
            assertEquals(0, flow.drivingPressure(1e5 + d) + flow.drivingPressure(1e5 - d), 1e-6);
        }
    }
}
