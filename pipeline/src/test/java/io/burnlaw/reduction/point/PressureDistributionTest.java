package io.burnlaw.reduction.point;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.Oracle;
import io.burnlaw.reduction.ReferenceSeries;
import io.burnlaw.reduction.balance.BurnPressures;
import io.burnlaw.reduction.events.UniformTrace;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PressureDistributionTest {

    static Stream<double[]> published() {
        return ReferenceSeries.rows("/io/burnlaw/reduction/nth_mean_pressure.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("published")
    @Oracle(
            value =
                    "Closed form of the n-th power mean of a linear trace: [(P2^(n+1) - P1^(n+1))/((n+1)(P2 - P1))]^(1/n)",
            agreement = "relative 3e-5 through 200 bins of a record of 20,000 samples")
    void meansOfALinearTraceAgreeWithTheirClosedForm(double[] row) {
        int n = 20_000;
        double[] time = new double[n + 1];
        double[] pressure = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            time[i] = i / (double) n;
            pressure[i] = (row[0] + (row[1] - row[0]) * time[i]) * 1e6;
        }
        UniformTrace record = UniformTrace.of(time, pressure, 0, 1);
        PressureDistribution distribution = BurnPressures.between(record, 0, 1, 1);
        // 3e-5: within one of 200 bins of ln P the spread is lost, at most (0.8 %)^2 / 24 of the mean
        assertAll(
                () -> assertEquals(1, distribution.powerMean(1) / (row[3] * 1e6), 3e-5),
                () -> assertEquals(1, distribution.powerMean(row[2]) / (row[4] * 1e6), 3e-5));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void binningKeepsThePowerMeansOfARoughRecord(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 3000;
        double[] time = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i * 1e-3;
            pressure[i] = 3e6 + 1.5e6 * Math.sin(i * 2e-3) + 1e5 * random.nextDouble();
        }
        UniformTrace record = UniformTrace.of(time, pressure, 0, 3);
        for (double m : new double[] {-0.3, 0.2, 0.5, 0.9}) {
            double sum = 0;
            for (int i = 0; i < record.size(); i++) {
                sum += Math.pow(record.pressure(i), m);
            }
            double direct = Math.pow(sum / record.size(), 1 / m);
            // 3e-5: as above
            assertEquals(1, BurnPressures.between(record, 0, 3, 1).powerMean(m) / direct, 3e-5);
        }
    }

    @Test
    void powerMeansRiseWithTheirExponent() {
        PressureDistribution two = PressureDistribution.of(new double[] {2e6, 8e6}, new double[] {1, 3});
        assertTrue(two.powerMean(-0.5) < two.powerMean(0) && two.powerMean(0) < two.powerMean(0.5));
        assertTrue(two.powerMean(0.5) < two.powerMean(1));
    }
}
