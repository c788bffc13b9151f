package io.burnlaw.reduction.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.reduction.events.UniformTrace;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class UnseenEndTest {

    private static final double AMBIENT = 101_325;

    /** Share for a record of 20 s. */
    private static double share(DoubleUnaryOperator gauge, double zeroStd) {
        double[] time = new double[2_000];
        double[] pressure = new double[2_000];
        for (int i = 0; i < time.length; i++) {
            time[i] = 0.01 * i;
            pressure[i] = AMBIENT + gauge.applyAsDouble(time[i]);
        }
        UniformTrace record = UniformTrace.of(time, pressure, 0, 20);
        return UnseenEnd.share(
                new BurnInputs(record, null, 1800, 1e-4, 1e-4, new ChokedFlowFraction(1.13, AMBIENT), 0, 1e-3),
                zeroStd,
                0);
    }

    @Test
    void aSlowMotorThatEndsFourKilopascalsAboveItsZeroMayHaveBeenOutForLong() {
        // 25 kPa for 16 s, then 2 kPa: the flow goes with the root, 0.29 of it for 4 s of 17.2
        double all = share(t -> t < 16 ? 25e3 : 2e3, 100);
        assertEquals(Math.sqrt(2 / 25.0) * 4 / (16 + 4 * Math.sqrt(2 / 25.0)), all, 0.1 * all);
        // half of it where the zero is no better known than that
        assertEquals(all / 2, share(t -> t < 16 ? 25e3 : 2e3, 1_000), 0.01);
    }

    @Test
    void aSteepTailOffOfChokedFlowHidesNothing() {
        assertEquals(0, share(t -> t < 19.9 ? 2e6 : 2e6 * Math.exp(-(t - 19.9) / 0.02), 1_000));
        assertEquals(0, share(t -> 2e6, 1_000));
    }

    @Test
    void aZeroThatIsHardlyKnownHidesMore() {
        DoubleUnaryOperator slow = t -> t < 16 ? 25e3 : 25e3 * Math.exp(-(t - 16) / 0.5);
        assertTrue(share(slow, 1_500) > 2 * share(slow, 100));
    }
}
