package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of the detectors whatever the record: laws of nature, and sizes that are known by construction. */
class ConditioningLawsTest {

    private static final double NOISE = 6e3;
    private static final double RATE = 1000;

    /** A record with something wrong; time [s] and pressure [Pa, absolute]. */
    private record Wrong(String name, double[] time, double[] pressure) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static double[] time() {
        return SyntheticRecord.time(RATE);
    }

    private static double[] plain(long seed) {
        return SyntheticRecord.pressure(time(), NOISE, seed);
    }

    private static Wrong changed(String name, java.util.function.DoubleBinaryOperator change) {
        double[] time = time();
        double[] pressure = plain(3);
        for (int i = 0; i < time.length; i++) {
            pressure[i] = change.applyAsDouble(time[i], pressure[i]);
        }
        return new Wrong(name, time, pressure);
    }

    private static Wrong gap(double from, double to) {
        double[] time = time();
        double[] pressure = plain(3);
        int[] kept = IntStream.range(0, time.length)
                .filter(i -> time[i] < from || time[i] >= to)
                .toArray();
        return new Wrong(
                "gap",
                Arrays.stream(kept).mapToDouble(i -> time[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> pressure[i]).toArray());
    }

    static Stream<Wrong> records() {
        return Stream.of(
                changed("nothing", (t, p) -> p),
                changed("offset", (t, p) -> p + 6e4),
                changed("drift", (t, p) -> p + 6e4 * t),
                changed("limit", (t, p) -> Math.min(p, 0.9 * SyntheticRecord.TOP)),
                changed("spike", (t, p) -> Math.abs(t - 0.7) < 1e-6 ? p + 1e6 : p),
                changed("hum", (t, p) -> p + 4e4 * Math.sin(2 * Math.PI * 50 * t)),
                gap(0.9, 0.96));
    }

    private static ConditionedTrace condition(double[] time, double[] pressure, double ambient) {
        return TraceConditioning.condition(SyntheticRecord.trace(time, pressure), ambient, TraceSettings.unstated());
    }

    private static List<FindingCode> codes(ConditionedTrace seen) {
        return seen.findings().stream().map(Finding::code).toList();
    }

    @ParameterizedTest
    @MethodSource("records")
    void whatIsSeenDoesNotDependOnWhenTheClockWasStarted(Wrong wrong) {
        ConditionedTrace here = condition(wrong.time(), wrong.pressure(), SyntheticRecord.AMBIENT);
        double[] later = Arrays.stream(wrong.time()).map(t -> t + 4096).toArray();
        ConditionedTrace there = condition(later, wrong.pressure(), SyntheticRecord.AMBIENT);
        assertThat(codes(there)).isEqualTo(codes(here));
        // 1e-4 of the noise: a phase of hum over an hour, and times of 12 digits
        assertThat(there.noiseStd()).isCloseTo(here.noiseStd(), within(1e-4 * NOISE));
        assertThat(there.zeroStd()).isCloseTo(here.zeroStd(), within(1e-4 * NOISE));
    }

    @ParameterizedTest
    @MethodSource("records")
    void whatIsSeenDoesNotDependOnTheScaleOfThePressure(Wrong wrong) {
        ConditionedTrace small = condition(wrong.time(), wrong.pressure(), SyntheticRecord.AMBIENT);
        double[] scaled = Arrays.stream(wrong.pressure()).map(p -> 8 * p).toArray();
        ConditionedTrace large = condition(wrong.time(), scaled, 8 * SyntheticRecord.AMBIENT);
        assertThat(codes(large)).isEqualTo(codes(small));
        // a power of two: the same bits but the exponent, up to sums in trigonometric fits
        assertThat(large.noiseStd()).isCloseTo(8 * small.noiseStd(), within(1e-6 * NOISE));
        assertThat(large.trace().pressure(1000)).isCloseTo(8 * small.trace().pressure(1000), within(1.0));
    }

    @ParameterizedTest
    @MethodSource("records")
    void aSecondPassFindsNothingLeftToTakeOff(Wrong wrong) {
        ConditionedTrace once = condition(wrong.time(), wrong.pressure(), SyntheticRecord.AMBIENT);
        ConditionedTrace twice = condition(once.trace().times(), once.trace().pressures(), SyntheticRecord.AMBIENT);
        assertThat(codes(twice))
                .doesNotContain(
                        FindingCode.ZERO_OFFSET, FindingCode.BASELINE_DRIFT, FindingCode.SPIKES, FindingCode.MAINS_HUM);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.003, 0.003})
    void aDriftTooSmallForAWordIsTakenOffAllTheSame(double share) {
        double[] time = time();
        double[] pressure = plain(5);
        double length = time[time.length - 1];
        for (int i = 0; i < time.length; i++) {
            pressure[i] += share * SyntheticRecord.TOP * time[i] / length;
        }
        ConditionedTrace seen = condition(time, pressure, SyntheticRecord.AMBIENT);
        assertThat(seen.findings()).isEmpty();
        double after = Scatter.median(seen.trace().pressures(), time.length - 400, time.length);
        // Four standard errors of a median of 400, and as much of the one before the burn.
        assertThat(after - SyntheticRecord.AMBIENT).isCloseTo(0, within(8 * 1.25 * NOISE / Math.sqrt(300)));
    }

    @Test
    void aSmoulderIsNotTakenForTheZero() {
        double[] time = time();
        double[] pressure = plain(6);
        for (int i = 0; i < time.length; i++) {
            pressure[i] += time[i] >= 0.1 && time[i] < SyntheticRecord.IGNITION ? 15e3 : 0;
        }
        ConditionedTrace seen = condition(time, pressure, SyntheticRecord.AMBIENT);
        assertThat(seen.quietUntil()).isLessThan(0.11);
        double dwell = Scatter.median(seen.trace().pressures(), 120, 280) - SyntheticRecord.AMBIENT;
        // 15 kPa; four standard errors of medians of 100 and 160
        assertThat(dwell).isCloseTo(15e3, within(4 * 1.25 * NOISE * Math.sqrt(0.01 + 1 / 160.0)));
    }

    @Test
    void aRecordThatBeginsInTheRiseHasNoQuietPart() {
        for (int seed = 0; seed < 40; seed++) {
            double[] time = time();
            double[] pressure = SyntheticRecord.pressure(time, NOISE, seed);
            int first = (int) (RATE * SyntheticRecord.IGNITION) + seed % 4;
            ConditionedTrace seen = condition(
                    Arrays.copyOfRange(time, first, time.length),
                    Arrays.copyOfRange(pressure, first, time.length),
                    SyntheticRecord.AMBIENT);
            assertThat(codes(seen)).as("seed " + seed).containsExactly(FindingCode.NO_QUIET_PART);
        }
    }

    @Test
    void spikesAreCountedAndMended() {
        for (int seed = 0; seed < 20; seed++) {
            double[] time = time();
            double[] pressure = plain(seed);
            double[] before = pressure.clone();
            SplittableRandom random = new SplittableRandom(seed);
            int at = 400 + random.nextInt(900);
            pressure[at] -= 0.5e6;
            pressure[at + 60] += 0.5e6;
            ConditionedTrace seen = condition(time, pressure, SyntheticRecord.AMBIENT);
            assertThat(codes(seen)).containsExactly(FindingCode.SPIKES);
            assertThat(seen.findings().get(0).message()).contains("2 of 2500 samples");
            // the median of nine neighbours
            assertThat(seen.trace().pressure(at)).isCloseTo(before[at], within(6 * NOISE));
        }
    }

    @Test
    void humIsToldWithItsFrequencyAndTakenOff() {
        double[] time = time();
        double[] pressure = plain(8);
        double[] before = pressure.clone();
        for (int i = 0; i < time.length; i++) {
            pressure[i] += 5e4 * Math.sin(2 * Math.PI * 60 * time[i] + 1);
        }
        ConditionedTrace seen = condition(time, pressure, SyntheticRecord.AMBIENT);
        assertThat(seen.findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("60"));
        double left = 0;
        for (int i = 400; i < 1400; i++) {
            double off = seen.trace().pressure(i) - before[i];
            left += off * off / 1000;
        }
        // Amplitude known to noise·sqrt(2/N) = 170 Pa, and the zero to as much: a hundredth of the 35 kPa it had.
        assertThat(Math.sqrt(left)).isLessThan(700);
    }

    @Test
    void aGapAcrossTheRiseIsARejection() {
        Wrong wrong = gap(0.29, 0.33);
        ConditionedTrace seen = condition(wrong.time(), wrong.pressure(), SyntheticRecord.AMBIENT);
        assertThat(seen.findings()).anySatisfy(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.DROPPED_SAMPLES);
            assertThat(finding.severity()).isEqualTo(Severity.REJECTION);
            assertThat(finding.message()).contains("hides a change");
        });
    }

    @Test
    void aLoggerThatWasSetToASlowerRateHasLostNothing() {
        double[] time = time();
        double[] pressure = plain(9);
        int[] kept = IntStream.range(0, time.length)
                .filter(i -> time[i] < 2.0 || i % 8 == 0)
                .toArray();
        ConditionedTrace seen = condition(
                Arrays.stream(kept).mapToDouble(i -> time[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> pressure[i]).toArray(),
                SyntheticRecord.AMBIENT);
        assertThat(codes(seen)).doesNotContain(FindingCode.DROPPED_SAMPLES);
    }
}
