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
}
