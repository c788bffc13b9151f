package io.burnlaw.reduction.screening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.reduction.CleanFiring;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is told of traces that were drawn with a ruler: where and how much is known from the drawing. */
class ScreeningOfDrawnTracesTest {

    private static final CleanFiring ANY = CleanFiring.random(3);
    private static final double WEB = ANY.grain().web().value();

    /** One sample a millisecond, gauge pressure in MPa; noise 200 Pa, zero known to 100 Pa. */
    private static Burn burn(double seconds, double caseLimit, DoubleUnaryOperator megapascal) {
        int n = (int) Math.round(1000 * seconds) + 1;
        double[] time = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i / 1000.0;
            pressure[i] = CleanFiring.AMBIENT + 1e6 * megapascal.applyAsDouble(time[i]);
        }
        Trace trace = Trace.of("F1", time, Optional.of(pressure), Optional.empty());
        Hardware hardware =
                new Hardware(caseLimit > 0 ? OptionalDouble.of(1e6 * caseLimit) : OptionalDouble.empty(), 1.5);
        return new Burn(
                ANY.firing(),
                ANY.formulation(),
                hardware,
                ANY.grain(),
                new ConditionedTrace(trace, 200, 100, 0.3, List.of()));
    }

    private static Burn burn(double seconds, DoubleUnaryOperator megapascal) {
        return burn(seconds, 0, megapascal);
    }

    /** Up within 20 ms, level, and down at the pace of a chamber that empties, from which no collapse is seen. */
    private static double plain(double t, double from, double to, double level) {
        return t < from ? 0 : t < to ? level * Math.min(1, (t - from) / 0.02) : level * Math.exp(-(t - to) / 0.1);
    }

    private static double triangle(double t, double top, double height) {
        return height * Math.max(0, 1 - Math.abs(t - top) / 0.06);
    }

    private static Finding only(List<Finding> findings, FindingCode code) {
        assertThat(findings).extracting(Finding::code).containsExactly(code);
        return findings.get(0);
    }

    /** The numbers of a message, in their order. */
    private static double[] numbers(Finding finding) {
        Matcher number = Pattern.compile("-?\\d+(\\.\\d+)?([eE][-+]?\\d+)?").matcher(finding.message());
        return number.results()
                .mapToDouble(found -> Double.parseDouble(found.group()))
                .toArray();
    }

    @Test
    void pulsesAreCountedTimedAndMeasured() {
        double[] tops = {0.5, 0.9, 1.3, 1.8, 2.2};
        double[] heights = {1.2, 3, 2, 4, 2.4};
        Burn pulsing = burn(3, t -> {
            double sum = 0;
            for (int k = 0; k < tops.length; k++) {
                sum += triangle(t, tops[k], heights[k]);
            }
            return sum;
        });
        Finding told = only(BurnScreening.screen(pulsing), FindingCode.CHUFFING);
        double[] said = numbers(told);
        // count, first, last, 1/0.4 s as the median of 0.4, 0.4, 0.5, 0.4; median of the heights in kPa, which the
        // running mean over 3 ms of a top that falls by 1/60 a millisecond lowers by a ninetieth
        assertThat(said).startsWith(5, 0.5, 2.2, 2.5);
        assertThat(said[4]).isCloseTo(2400, within(2400 / 60.0));
        assertThat(told.at().getAsDouble()).isCloseTo(0.5, within(0.0011));
    }

    @Test
    void twoPulsesOrAValleyThatIsNoPauseAreNoChuffing() {
        Burn two = burn(3, t -> triangle(t, 0.5, 2) + triangle(t, 1.5, 3));
        assertThat(BurnScreening.screen(two)).extracting(Finding::code).doesNotContain(FindingCode.CHUFFING);
        // waves whose valleys keep six tenths of the tops, and four tenths
        for (double depth : new double[] {0.2, 0.45}) {
            Burn waves = burn(4, t -> plain(t, 0.5, 3, 2 + depth * 2 * Math.sin(12 * t)));
            assertThat(Chuffing.look(waves, BurnShape.of(waves)).isEmpty())
                    .as("%s", depth)
                    .isEqualTo(depth < 0.3);
        }
    }

    @Test
    void thePeakIsComparedWithTheLimitOfTheCase() {
        Burn above = burn(4, 2.5, t -> plain(t, 0.5, 3, 5));
        Finding told = only(BurnScreening.screen(above), FindingCode.ABOVE_CASE_LIMIT);
        double[] said = numbers(told);
        assertThat(said[1]).isEqualTo(5);
        assertThat(said[2]).isEqualTo(2);
        assertThat(said[3]).isEqualTo(2.5);
        assertThat(BurnScreening.screen(burn(4, 5.001, t -> plain(t, 0.5, 3, 5))))
                .isEmpty();
        assertThat(BurnScreening.screen(burn(4, 0, t -> plain(t, 0.5, 3, 5)))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.05, FAST", "0.3, NONE", "2, NONE", "60, NONE", "200, SLOW"})
    void aWebThatNoPropellantBurnsInThatTimeIsATimeInAnotherUnit(double seconds, String which) {
        // drawn with 1,000 samples; the time axis is stretched afterwards
        Burn drawn = burn(1, t -> t < 0.2 ? 0 : t < 0.8 ? 3 : 0);
        double[] time = drawn.record().trace().times();
        for (int i = 0; i < time.length; i++) {
            time[i] *= seconds / 0.6;
        }
        Trace trace = Trace.of("F1", time, Optional.of(drawn.record().trace().pressures()), Optional.empty());
        Burn burn = new Burn(
                drawn.firing(),
                drawn.formulation(),
                drawn.hardware(),
                drawn.grain(),
                new ConditionedTrace(
                        trace,
                        drawn.record().noiseStd(),
                        drawn.record().zeroStd(),
                        drawn.record().quietUntil(),
                        drawn.record().findings()));
        List<Finding> found = BurnTime.look(burn, BurnShape.of(burn));
        if (which.equals("NONE")) {
            assertThat(found).isEmpty();
            return;
        }
        Finding told = only(found, FindingCode.IMPLAUSIBLE_BURN_TIME);
        assertThat(told.severity()).isEqualTo(Severity.REJECTION);
        double[] said = numbers(told);
        double rate = 1e3 * WEB / seconds;
        // a sample of 600 at either end, and three digits
        assertThat(said[0]).isCloseTo(1e3 * WEB, within(0.01 * 1e3 * WEB));
        assertThat(said[1]).isCloseTo(seconds, within(0.01 * seconds));
        assertThat(said[2]).isCloseTo(rate, within(0.01 * rate));
        double other = which.equals("FAST") ? rate / 1000 : rate * 1000;
        assertThat(told.message()).contains(which.equals("FAST") ? "in s instead of ms" : "in ms instead of s");
        assertThat(said[said.length - 1]).isCloseTo(other, within(0.01 * other));
        // nothing else is looked at on such an axis
        assertThat(BurnScreening.screen(burn)).isEqualTo(found);
    }

    @ParameterizedTest
    @ValueSource(doubles = {2.4, 2.6})
    void aMotorThatNeverComesUpIsSlow(double ambients) {
        double level = ambients * CleanFiring.AMBIENT / 1e6;
        Burn burn = burn(12, t -> plain(t, 0.5, 10, level));
        List<Finding> found = BurnScreening.SlowBurn.look(burn, BurnShape.of(burn));
        if (ambients > 2.5) {
            assertThat(found).isEmpty();
            return;
        }
        double[] said = numbers(only(found, FindingCode.SLOW_BURNING));
        assertThat(said[0]).isCloseTo(0.5, within(0.02));
        assertThat(said[1]).isCloseTo((ambients + 1) * CleanFiring.AMBIENT / 1e3, within(1.0));
        assertThat(said[2]).isCloseTo(ambients + 1, within(0.01));
        assertThat(said[3]).isCloseTo(9.5, within(0.1));
    }

    @Test
    void aRecordWithoutBeginOrEndIsTold() {
        Burn begun = burn(3, t -> plain(t, -1, 2, 4));
        Finding alight = only(BurnScreening.Truncation.look(begun, BurnShape.of(begun)), FindingCode.NO_QUIET_PART);
        assertThat(alight.severity()).isEqualTo(Severity.REJECTION);
        assertThat(numbers(alight)).containsExactly(0, 4, 100);
        // e^-1 of the level is left, and e^-2, by which no web is left that a tail-off could hide
        Burn cut = burn(1.9, t -> plain(t, 0.5, 1.8, 4));
        Finding ends = only(BurnScreening.Truncation.look(cut, BurnShape.of(cut)), FindingCode.TRUNCATED);
        double[] said = numbers(ends);
        assertThat(said[0]).isEqualTo(1.9);
        assertThat(said[1]).isCloseTo(4 * Math.exp(-1), within(0.02));
        assertThat(said[2]).isCloseTo(37.0, within(1.0));
        Burn complete = burn(2, t -> plain(t, 0.5, 1.8, 4));
        assertThat(BurnScreening.Truncation.look(complete, BurnShape.of(complete)))
                .isEmpty();
    }

    @Test
    void withoutARiseThereWasNoIgnition() {
        Finding cold = only(BurnScreening.screen(burn(2, t -> triangle(t, 1, 0.0019))), FindingCode.NO_IGNITION);
        assertThat(cold.at().getAsDouble()).isCloseTo(1.0, within(0.01));
        // two per cent of the ambient pressure, 1.97 kPa
        assertThat(cold.message()).contains("a burn would show above 1.97 kPa");
        assertThat(BurnScreening.screen(burn(2, t -> triangle(t, 1, 0.0022))))
                .extracting(Finding::code)
                .doesNotContain(FindingCode.NO_IGNITION);
        assertThat(only(BurnScreening.screen(burn(0.006, t -> 1)), FindingCode.NO_IGNITION)
                        .message())
                .contains("only 7 samples");
    }

    /** A hump of 0.3 MPa over 60 ms on a record of 2.5 s, on a level, a slope, and the arch of a grain. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.8, 0", "0, 0.5"})
    void aHumpIsToldWithItsPlaceAndHeight(double slope, double arch) {
        DoubleUnaryOperator course = t -> plain(t, 0.5, 3, 4 + slope * (t - 1.75) - arch * (t - 1.75) * (t - 1.75));
        Burn clean = burn(4, course);
        assertThat(Blockage.look(clean, BurnShape.of(clean))).isEmpty();
        double at = 1.6;
        Burn blocked = burn(4, t -> course.applyAsDouble(t) + (Math.abs(t - at) <= 0.03 ? 0.3 : 0));
        double[] said = numbers(only(Blockage.look(blocked, BurnShape.of(blocked)), FindingCode.BLOCKAGE));
        double base = 1e3 * course.applyAsDouble(at);
        assertThat(said[0]).isCloseTo(at, within(0.03));
        // its top is level, and its flanks are those of the course
        assertThat(said[1]).isCloseTo(300.0, within(15.0));
        assertThat(said[2]).isCloseTo(100 * 300 / base, within(0.6));
        assertThat(said[3]).isBetween(20.0, 61.0);
        // less than a fortieth of the pressure is roughness
        Burn rough = burn(4, t -> course.applyAsDouble(t) + (Math.abs(t - at) <= 0.03 ? 0.08 : 0));
        assertThat(Blockage.look(rough, BurnShape.of(rough))).isEmpty();
    }

    @Test
    void aWaitIsSilentSmoulderingOrPulsing() {
        DoubleUnaryOperator main = t -> plain(t, 2, 4.5, 4);
        Burn silent = burn(6, t -> main.applyAsDouble(t) + triangle(t, 0.6, 1));
        Finding hang = only(LateRise.look(silent, BurnShape.of(silent)), FindingCode.HANG_FIRE);
        assertThat(numbers(hang)[0]).isCloseTo(2 - 0.54, within(0.08));
        assertThat(numbers(hang)[2]).isCloseTo(2, within(0.02));
        Burn smoulder = burn(6, t -> t > 0.6 && t < 2 ? 0.05 : main.applyAsDouble(t));
        Finding held = only(LateRise.look(smoulder, BurnShape.of(smoulder)), FindingCode.SMOULDER);
        double[] said = numbers(held);
        assertThat(said[0]).isCloseTo(1.4, within(0.08));
        assertThat(said[3]).isCloseTo(50.0, within(0.5));
        assertThat(said[4]).isCloseTo(1.2, within(0.06));
        Burn pulsing =
                burn(6, t -> main.applyAsDouble(t) + triangle(t, 0.5, 1) + triangle(t, 0.9, 1) + triangle(t, 1.3, 1));
        Finding pulses = only(LateRise.look(pulsing, BurnShape.of(pulsing)), FindingCode.CHUFFING);
        assertThat(pulses.severity()).isEqualTo(Severity.CAUTION);
        assertThat(numbers(pulses)).startsWith(3, 0.5, 1.3, 2.5);
        Burn prompt = burn(6, t -> main.applyAsDouble(t) + triangle(t, 1.95, 1));
        assertThat(LateRise.look(prompt, BurnShape.of(prompt))).isEmpty();
    }

    @Test
    void aMotorThatOpensFallsFasterThanItsChamberCanEmpty() {
        // the same level until web is left by the pressure integral: one and a half tenths of what c* promises
        double throat = ANY.firing().throatDiameter().value();
        double impulse = ANY.firing().propellantMass().orElseThrow().value()
                * ANY.formulation().characteristicVelocity().orElseThrow().value()
                / (Math.PI / 4 * throat * throat);
        double level = 3;
        double whole = impulse / (1e6 * level + CleanFiring.AMBIENT);
        for (double share : new double[] {0.5, 0.95}) {
            double end = 0.5 + share * whole;
            Burn opened = burn(end + 1, t -> t < 0.5 || t > end + 0.002 ? 0 : t > end ? level / 2 : level);
            List<Finding> found = Collapse.look(opened, BurnShape.of(opened));
            if (share > 0.9) {
                assertThat(found).isEmpty();
                continue;
            }
            Finding told = only(found, FindingCode.PRESSURE_COLLAPSE);
            double[] said = numbers(told);
            assertThat(said[0]).isCloseTo(end, within(0.003));
            assertThat(said[1]).isCloseTo(0.7 * level, within(0.02));
            assertThat(said[2]).isCloseTo(0.25 * level, within(0.02));
            assertThat(said[said.length - 1]).isCloseTo(100 * (1 - share), within(1.0));
        }
    }
}
