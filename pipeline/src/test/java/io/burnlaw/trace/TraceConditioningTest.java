package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TraceConditioningTest {

    private static final double NOISE = 6e3;

    private static ConditionedTrace condition(double[] time, double[] pressure) {
        return TraceConditioning.condition(
                SyntheticRecord.trace(time, pressure), SyntheticRecord.AMBIENT, TraceSettings.unstated());
    }

    @ParameterizedTest
    @ValueSource(doubles = {500, 1000, 5000, 20000})
    void aCleanRecordIsLeftAloneAtAnyRate(double samplesPerSecond) {
        for (int seed = 0; seed < 10; seed++) {
            double[] time = SyntheticRecord.time(samplesPerSecond);
            ConditionedTrace seen = condition(time, SyntheticRecord.pressure(time, NOISE, seed));
            assertThat(seen.findings()).isEmpty();
            // 150 samples or more: the scatter of a MAD is about 1.17/sqrt(2 n), 4 of them 27 %.
            assertThat(seen.noiseStd()).isBetween(0.73 * NOISE, 1.27 * NOISE);
            assertThat(seen.quietUntil()).isBetween(0.8 * SyntheticRecord.IGNITION, SyntheticRecord.IGNITION);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1e6, -0.02e6, 0.02e6, 0.05e6, 0.3e6})
    void anOffsetIsTakenOffAndTold(double offset) {
        double[] time = SyntheticRecord.time(1000);
        double[] pressure = SyntheticRecord.pressure(time, NOISE, 7);
        for (int i = 0; i < pressure.length; i++) {
            pressure[i] += offset;
        }
        ConditionedTrace seen = condition(time, pressure);
        assertThat(seen.findings()).extracting(Finding::code).containsExactly(FindingCode.ZERO_OFFSET);
        // Four standard uncertainties of the median over the plateau's mean.
        assertThat(seen.trace().pressure(100) - SyntheticRecord.pressure(time, NOISE, 7)[100])
                .isCloseTo(0, within(4 * seen.zeroStd()));
    }

    @Test
    void anAbsoluteRecordReadAsGaugeIsNamed() {
        double[] time = SyntheticRecord.time(1000);
        double[] pressure = SyntheticRecord.pressure(time, 1e3, 7);
        for (int i = 0; i < pressure.length; i++) {
            pressure[i] += SyntheticRecord.AMBIENT;
        }
        assertThat(condition(time, pressure).findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("probably absolute, not gauge"));
    }

    /** Steps of 10 kPa; the noise in steps. A level between two steps flickers by noise of any size. */
    @ParameterizedTest
    @ValueSource(doubles = {0.03, 0.1, 0.2})
    void aConverterCoarserThanItsNoiseIsNotAtItsLimit(double noise) {
        for (int seed = 0; seed < 10; seed++) {
            assertThat(condition(TIME, inSteps(noise, 5e3, seed, Double.MAX_VALUE))
                            .findings())
                    .as("seed %d", seed)
                    .extracting(Finding::code)
                    .doesNotContain(FindingCode.SATURATION);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 2, 10})
    void aLimitIsSeenThroughAsFewStepsAsTheNoiseCrosses(double noise) {
        for (int seed = 0; seed < 10; seed++) {
            assertThat(condition(TIME, inSteps(noise, 5e3, seed, 2.9e6)).findings())
                    .as("seed %d", seed)
                    .extracting(Finding::code)
                    .contains(FindingCode.SATURATION);
        }
    }

    private static final double[] TIME = SyntheticRecord.time(1000);

    private static double[] inSteps(double noise, double offset, long seed, double limit) {
        double step = 1e4;
        double[] pressure = SyntheticRecord.pressure(TIME, noise * step, seed);
        for (int i = 0; i < pressure.length; i++) {
            // A round top, as the surface of a grain makes it.
            double round = 2e5 * Math.max(0, (TIME[i] - 0.32) * (1.5 - TIME[i]));
            pressure[i] = Math.min(Math.rint((pressure[i] + offset + round) / step) * step, limit);
        }
        return pressure;
    }
}
