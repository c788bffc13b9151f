package io.burnlaw.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.quantity.Measured;
import java.util.List;
import org.junit.jupiter.api.Test;

class IgnitionSpikeTest {

    @Test
    void theNextFiringScattersAsThoseSoFarAndAsUsual() {
        assertThat(IgnitionSpike.of(List.of())).isEqualTo(IgnitionSpike.NONE);
        // by hand: squares 3 (0.3 * 20)^2 + 2 * 10^2 = 308 over 3 + 2 - 1, times 1 + 1/2
        IgnitionSpike two = IgnitionSpike.of(List.of(10.0, 30.0));
        assertThat(two.mean()).isEqualTo(20);
        assertThat(two.std()).isCloseTo(Math.sqrt(308 / 4.0 * 1.5), offset(1e-9));
        // normal quantile 1.959964: Abramowitz and Stegun (1964), table 26.5
        assertThat(two.high(0.95)).isCloseTo(20 + 1.959964 * two.std(), offset(1e-4));
        assertThat(two.low(0.95)).isZero();
    }

    @Test
    void aPeakIsThatOfTheIgnitionWhereItStandsAboveTheBurn() {
        EndBurner grain = new EndBurner(Measured.of(0.06), Measured.of(0.04));
        Motor motor =
                new Motor(grain, 1800, new Gas(900, 1.13), new Nozzle(0.003), Motor.freeVolume(grain, 0), 101_325);
        Prediction usual =
                Prediction.of(motor, p -> 5e-3 * Math.pow(p / 1e6, 0.36)).orElseThrow();
        double force = 1e6 * motor.nozzle().throatArea();
        Prediction spiked =
                Prediction.of(motor, p -> 5e-3 * Math.pow(p / 1e6, 0.36), force).orElseThrow();
        // an end burner burns at one pressure all along, so that its mean is its pressure where the flame is everywhere
        assertThat(spiked.maxPressure()).isCloseTo(usual.meanPressure() + 1e6, offset(0.02 * usual.meanPressure()));
        assertThat(spiked.meanPressure()).isEqualTo(usual.meanPressure());
        assertThat(spiked.burnTime()).isEqualTo(usual.burnTime());
    }
}
