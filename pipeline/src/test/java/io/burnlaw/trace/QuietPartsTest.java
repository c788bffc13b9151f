package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A slow motor at 25 kPa behind an igniter's spike of 250 kPa, 100 samples a second, noise of 1 kPa. */
class QuietPartsTest {

    private static QuietParts found(double length, DoubleUnaryOperator behind) {
        int n = (int) (100 * length);
        double[] time = new double[n];
        double[] values = new double[n];
        Random random = new Random(5);
        for (int i = 0; i < n; i++) {
            double t = 0.01 * i - 2;
            time[i] = t;
            double p = t < 0 ? 0 : t < 0.2 ? 250e3 : t < 15 ? 25e3 : behind.applyAsDouble(t - 15);
            values[i] = p + 1e3 * random.nextGaussian();
        }
        return QuietParts.find(time, values);
    }

    @Test
    void theZeroBehindALongTailOffIsItsRest() {
        // an exponential of 0.6 s above a zero that moved by 2 kPa: after 4 s 0.03 kPa are left of it
        QuietParts parts = found(24, t -> 2e3 + 23e3 * Math.exp(-t / 0.6));
        // twelve samples of the least stretch leave 0.3 kPa of noise in its median
        assertThat(parts.after().orElseThrow().value()).isCloseTo(2e3, within(600.0));
        assertThat(parts.after().orElseThrow().from()).isGreaterThan(1_700);
    }

    @Test
    void aRecordThatEndsInItsTailOffHasNoZeroBehindIt() {
        assertThat(found(18, t -> 25e3 * Math.exp(-t / 1.5)).after()).isEmpty();
    }

    @Test
    void aRecordThatEndsInTheBurnHasNoQuietPartBehindIt() {
        for (double length = 2.5; length < 18; length += 0.37) {
            assertThat(found(length, t -> 25e3).after()).isEmpty();
        }
    }
}
