package io.burnlaw.reduction.events;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UniformTraceTest {

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theIntegralIsThatOfTheRecordHoweverUnevenlyItWasSampled(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 50 + random.nextInt(20_000);
        double[] time = new double[n];
        double[] pressure = new double[n];
        double at = random.nextDouble();
        for (int i = 0; i < n; i++) {
            at += 1e-4 * (0.01 + random.nextDouble() * random.nextDouble());
            time[i] = at;
            pressure[i] = 1e6 * random.nextDouble();
        }
        double integral = 0;
        for (int i = 1; i < n; i++) {
            integral += 0.5 * (pressure[i] + pressure[i - 1]) * (time[i] - time[i - 1]);
        }
        UniformTrace record = UniformTrace.of(time, pressure, time[0], time[n - 1]);
        double sum = 0;
        for (int i = 0; i < record.size(); i++) {
            sum += record.pressure(i) * record.step();
        }
        // Rounding only: both are sums of the same trapezia, cut at the cells.
        assertEquals(1, sum / integral, 1e-9);
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 333, 1000})
    void aCoarserGridKeepsTheMean(int most) {
        double[] time = new double[5000];
        double[] pressure = new double[5000];
        for (int i = 0; i < time.length; i++) {
            time[i] = i * 1e-3;
            pressure[i] = 1e6 + 1e5 * Math.sin(i * 0.01);
        }
        UniformTrace fine = UniformTrace.of(time, pressure, 0, 4.999);
        UniformTrace coarse = fine.coarser(most);
        assertTrue(coarse.size() <= most);
        double end = coarse.time(coarse.size() - 1) + 0.5 * coarse.step();
        // 1e-3: the last cells may be left over, as the numbers do not divide
        assertEquals(1, coarse.mean(0, end) / fine.mean(0, end), 1e-3);
    }
}
