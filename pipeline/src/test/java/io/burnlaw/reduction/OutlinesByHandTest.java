package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Hardware;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.Operation;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.screening.BurnShape;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Where an operation and its main burn lie, and what an even grid holds, of records whose samples can be counted. */
class OutlinesByHandTest {

    private static final CleanFiring ANY = CleanFiring.random(3);

    private static ConditionedTrace record(int samples, double noise, double zeroStd, DoubleUnaryOperator megapascal) {
        double[] time = new double[samples];
        double[] pressure = new double[samples];
        for (int i = 0; i < samples; i++) {
            time[i] = i / 1000.0;
            pressure[i] = CleanFiring.AMBIENT + 1e6 * megapascal.applyAsDouble(time[i]);
        }
        return new ConditionedTrace(
                Trace.of("F1", time, Optional.of(pressure), Optional.empty()), noise, zeroStd, 0.3, List.of());
    }

    private static BurnShape shape(ConditionedTrace record) {
        return BurnShape.of(new Burn(
                ANY.firing(), ANY.formulation(), new Hardware(OptionalDouble.empty(), 1.5), ANY.grain(), record));
    }

    private static double box(double t) {
        return t < 0.4995 || t > 2.5005 ? 0 : 4;
    }

    @Test
    void theOutlineOfABoxIsItsEdgesSmoothedOverFiveSamples() {
        // the samples 500 to 2500 at 4 MPa: 2,001 of them, a four-hundredth is five
        BurnShape shape = shape(record(3001, 500, 100, OutlinesByHandTest::box));
        assertThat(shape.half()).isEqualTo(2);
        assertThat(shape.smoothStd()).isCloseTo(500 / Math.sqrt(5), within(1e-9));
        assertThat(shape.peak()).isCloseTo(4e6, within(1e-3));
        assertThat(shape.peakAt()).isEqualTo(502);
        // at 498 a fifth of the level is reached, at 499 two fifths, and the same on the way down
        assertThat(shape.rise()).isEqualTo(498);
        assertThat(shape.fall()).isEqualTo(2503);
        assertThat(shape.level()).isCloseTo(4e6, within(1e-3));
        assertThat(shape.mainRise()).isEqualTo(499);
        assertThat(shape.mainFall()).isEqualTo(2501);
        assertThat(shape.mainDuration()).isCloseTo(2.002, within(1e-9));
        assertThat(shape.interval()).isCloseTo(0.001, within(1e-12));
        assertThat(shape.size()).isEqualTo(3001);
        // from sample 600 to 1600: one second
        assertThat(shape.absoluteIntegral(600, 1601, 1e5)).isCloseTo(4.1e6, within(1.0));
        // trapezoids from 0 to 4 MPa at the edges: one step each more than 2 s
        assertThat(shape.absoluteIntegral(0, 3001, 0)).isCloseTo(8e6 + 4e3, within(1.0));
    }

    @Test
    void theLevelIsThatOfTheMiddleHalfOfTheIntegral() {
        // a straight rise from 0.5 s to 2.5 s: from a tenth of the peak on, a quarter of the integral is passed at
        // 0.5075
        // of the peak and three quarters at 0.8675; in the middle between them 0.6875
        BurnShape rising = shape(record(3001, 500, 100, t -> t < 0.5 || t > 2.5 ? 0 : 2 * (t - 0.5)));
        assertThat(rising.level()).isCloseTo(0.6875 * 4e6, within(0.003 * 4e6));
        // three tenths of that back to the begin, half of it at the end
        assertThat(rising.mainRise()).isBetween(500 + 410, 500 + 416);
        assertThat(rising.mainFall()).isBetween(2500, 2503);
        // a record that ends high has no fall
        BurnShape open = shape(record(1500, 500, 100, OutlinesByHandTest::box));
        assertThat(open.mainFall()).isEqualTo(1500);
        assertThat(open.fall()).isEqualTo(1500);
        assertThat(open.mainDuration()).isCloseTo(1.0, within(0.002));
    }

    private static Optional<Operation> found(
            int samples, double noise, double zeroStd, DoubleUnaryOperator megapascal) {
        ConditionedTrace record = record(samples, noise, zeroStd, megapascal);
        return Operation.find(record.trace(), CleanFiring.AMBIENT, record);
    }

    @Test
    void theOperationOfABoxIsItsEdges() {
        Operation seen = found(3001, 200, 100, OutlinesByHandTest::box).orElseThrow();
        // a smoothing over a few samples; how many depends on the noise, which is little
        assertThat(seen.from()).isBetween(0.490, 0.500);
        assertThat(seen.to()).isBetween(2.500, 2.510);
        assertThat(seen.highest()).isCloseTo(4e6, within(1e-3));
        assertThat(seen.recorded()).isTrue();
        Operation open = found(1500, 200, 100, OutlinesByHandTest::box).orElseThrow();
        assertThat(open.recorded()).isFalse();
        assertThat(open.to()).isCloseTo(1.499, within(1e-9));
        Operation begun = found(3001, 200, 100, t -> t > 2.5005 ? 0 : 4).orElseThrow();
        assertThat(begun.from()).isZero();
    }

    @Test
    void sharesOfThePeakDecideWhatBurnsAndWhatIsOut() {
        // a smoulder from 0.2 s on at 0.12 and 0.08 % of the peak, up to 2.8 s 0.8 and 0.6 %
        assertThat(found(3001, 20, 10, t -> t > 0.2 && t < 0.5 ? 0.0012 * 4 : box(t))
                        .orElseThrow()
                        .from())
                .isBetween(0.190, 0.210);
        assertThat(found(3001, 20, 10, t -> t > 0.2 && t < 0.5 ? 0.0008 * 4 : box(t))
                        .orElseThrow()
                        .from())
                .isBetween(0.490, 0.500);
        assertThat(found(3001, 20, 10, t -> t > 2.5005 && t < 2.8 ? 0.008 * 4 : box(t))
                        .orElseThrow()
                        .to())
                .isBetween(2.790, 2.810);
        // below that a level that holds and then falls is a smoulder, and one that comes back evenly is not
        assertThat(found(3001, 20, 10, t -> t > 2.5005 && t < 2.8 ? 0.006 * 4 : box(t))
                        .orElseThrow()
                        .to())
                .isBetween(2.790, 2.810);
        assertThat(found(3001, 20, 10, t -> t > 2.5005 && t < 2.8 ? 0.006 * 4 * (2.8 - t) / 0.3 : box(t))
                        .orElseThrow()
                        .to())
                .isBetween(2.500, 2.510);
        // three standard uncertainties of the zero are more than the smoulder
        assertThat(found(3001, 20, 1700, t -> t > 0.2 && t < 0.5 ? 0.0012 * 4 : box(t))
                        .orElseThrow()
                        .from())
                .isBetween(0.490, 0.500);
    }

    @Test
    void whatDoesNotRiseOutOfTheNoiseIsNoOperation() {
        // smoothed over 2·33 + 1 samples, eight standard deviations of noise are 0.98 of it
        assertThat(found(3001, 4.0e6, 100, OutlinesByHandTest::box)).isPresent();
        assertThat(found(3001, 4.3e6, 100, OutlinesByHandTest::box)).isEmpty();
        assertThat(found(3001, 0, 0, t -> 0)).isEmpty();
        assertThat(found(3001, 0, 0, t -> -box(t))).isEmpty();
        assertThat(found(19, 0, 0, t -> 4)).isEmpty();
        assertThat(found(20, 0, 0, t -> 4)).isPresent();
    }

    /** Uneven samples of 1 MPa + 2 MPa/s·t, cut between two of them. */
    private static UniformTrace uneven() {
        int n = 400;
        double[] time = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.0025 * i + 0.001 * Math.sin(i);
            pressure[i] = 1e6 + 2e6 * time[i];
        }
        return UniformTrace.of(time, pressure, 0.1234, 0.8765);
    }

    @Test
    void eachCellOfAStraightLineHasTheValueOfItsMiddle() {
        UniformTrace record = uneven();
        assertThat(record.size() * record.step()).isCloseTo(0.8765 - 0.1234, within(1e-12));
        for (int i = 0; i < record.size(); i++) {
            assertThat(record.time(i)).isCloseTo(0.1234 + (i + 0.5) * record.step(), within(1e-12));
            assertThat(record.pressure(i)).as("cell %d", i).isCloseTo(1e6 + 2e6 * record.time(i), within(1e-3));
            assertThat(record.place(record.time(i))).isCloseTo(i, within(1e-9));
            assertThat(record.cell(record.time(i) + 0.4 * record.step())).isEqualTo(i);
        }
        assertThat(record.samplesPerCell()).isCloseTo(301.0 / record.size(), within(2.0 / record.size()));
        assertThat(record.cell(-1)).isZero();
        assertThat(record.cell(9)).isEqualTo(record.size() - 1);
        // cells whose middles lie in it: the mean of a line is that of its middle
        assertThat(record.mean(0.3, 0.5)).isCloseTo(1.8e6, within(2e6 * record.step()));
        assertThat(record.mean(0.4, 0.4)).isCloseTo(1.8e6, within(2e6 * record.step()));
        assertThat(record.shifted(5e4).pressure(7)).isEqualTo(record.pressure(7) + 5e4);
        assertThat(record.shifted(5e4).time(7)).isEqualTo(record.time(7));
    }

    @Test
    void aCoarserGridHasTheMeansOfTheFinerOne() {
        UniformTrace record = uneven();
        UniformTrace coarse = record.coarser(record.size() / 3);
        int together = (int) Math.round(coarse.step() / record.step());
        assertThat(coarse.size()).isLessThanOrEqualTo(record.size() / 3);
        assertThat(together).isBetween(3, 4);
        assertThat(coarse.samplesPerCell()).isCloseTo(together * record.samplesPerCell(), within(1e-12));
        for (int i = 0; i < coarse.size(); i++) {
            assertThat(coarse.pressure(i)).isCloseTo(1e6 + 2e6 * coarse.time(i), within(1e-3));
        }
        assertThat(record.coarser(record.size())).isSameAs(record);
        assertThat(record.coarser(record.size() - 1).size()).isEqualTo(record.size() / 2);
    }
}
