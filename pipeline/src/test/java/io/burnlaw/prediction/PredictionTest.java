package io.burnlaw.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import io.burnlaw.Oracle;
import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.quantity.Measured;
import org.junit.jupiter.api.Test;

class PredictionTest {

    private static Motor endBurner(double throat) {
        Grain grain = new EndBurner(Measured.of(0.08), Measured.of(0.05));
        return new Motor(grain, 1750, new Gas(1500, 1.2), new Nozzle(throat), 2e-4, 101_325);
    }

    @Test
    @Oracle(
            value =
                    "closed form of the steady chamber, P = (K_n a (rho - rho_gas) c*)^(1/(1-n)): Sutton and Biblarz (2001)",
            agreement = "0.1 % in pressure, 0.5 % in burn time of an end burner")
    void anEndBurnerStandsAtItsEquilibrium() {
        double throat = 0.005;
        Motor motor = endBurner(throat);
        double n = 0.35;
        double a = 5e-3 / Math.pow(1e6, n);
        double kn = 0.08 * 0.08 / (throat * throat);
        double pressure = 1e6;
        for (int i = 0; i < 100; i++) {
            double gas = motor.gas().density(pressure);
            pressure = Math.pow(kn * a * (1750 - gas) * 1500, 1 / (1 - n));
        }
        Prediction prediction = Prediction.of(motor, p -> a * Math.pow(p, n)).orElseThrow();
        // 1 %: the rise takes some hundredths of a burn of five seconds
        assertThat(prediction.meanPressure()).isCloseTo(pressure, withPercentage(1));
        assertThat(prediction.firing().maximumPressure()).isCloseTo(pressure, withPercentage(0.1));
        assertThat(prediction.burnTime()).isCloseTo(0.05 / (a * Math.pow(pressure, n)), withPercentage(0.5));
    }

    @Test
    void aMotorThatGoesOutIsNotPredicted() {
        assertThat(Prediction.of(endBurner(0.005), p -> p > 1e5 ? 0 : 1e-6)).isEmpty();
    }
}
