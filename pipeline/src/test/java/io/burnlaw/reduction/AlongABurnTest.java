package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.reduction.events.HistoryThinning;
import io.burnlaw.reduction.events.Operation;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.strand.StrandTiming;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sorting, thinning and judging rates along a burn that were made by a known law. */
class AlongABurnTest {

    private static final double WEB = 0.012;

    /** Arched in pressure, r = 6 mm/s·(P/1 MPa)^0.35 times what the factor says of the share of the web. */
    private static List<InstantaneousRate> burn(DoubleUnaryOperator factor) {
        List<InstantaneousRate> along = new ArrayList<>();
        for (int i = 0; i < 160; i++) {
            double share = 0.05 + 0.9 * i / 159;
            double pressure = 3e6 * (1 + 0.8 * share * (1 - share)) * (1 - 0.1 * share);
            double rate = 6e-3 * Math.pow(pressure / 1e6, 0.35) * factor.applyAsDouble(share);
            along.add(new InstantaneousRate(share, share * WEB, pressure, rate));
        }
        return along;
    }

    /** A throat that grew by 10 % in area lets a rate seem lower by 1/1.1 at the end of the web. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.04, -0.04, -0.1})
    void anEvenDriftIsAThroatThatChanged(double area) {
        List<InstantaneousRate> along = burn(x -> Math.pow(1 + area, -x));
        // 0.2 %: the exponent is held near 0.4, which takes a little of the drift
        assertThat(ThroatChange.of(along, WEB).orElseThrow().area()).isCloseTo(area, within(0.002));
        assertThat(ErosiveHump.of(along, WEB)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.06, 0.12, 0.2})
    void aStartThatFadesIsAHump(double fading) {
        List<InstantaneousRate> along = burn(x -> Math.exp(0.2 * Math.exp(-x / fading)));
        ErosiveHump hump = ErosiveHump.of(along, WEB).orElseThrow();
        assertThat(hump.fading()).isEqualTo(fading);
        // e^0.2 - 1 = 22.1 %; 1 %: the prior of the exponent, as above
        assertThat(hump.excess()).isCloseTo(Math.expm1(0.2), within(0.01));
        assertThat(ThroatChange.of(along, WEB)).isEmpty();
    }

    @Test
    void aPlainLawIsNeither() {
        for (double small : new double[] {0, 0.015, -0.015}) {
            List<InstantaneousRate> along = burn(x -> Math.exp(small * x));
            assertThat(ThroatChange.of(along, WEB)).isEmpty();
            assertThat(ErosiveHump.of(along, WEB)).isEmpty();
        }
        // too slow a start is no hump
        assertThat(ErosiveHump.of(burn(x -> Math.exp(-0.2 * Math.exp(-x / 0.12))), WEB))
                .isEmpty();
    }

    @Test
    void ratesAreSortedIntoTwelveEvenRangesOfLnPressure() {
        List<InstantaneousRate> along = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            // from 1 to e² MPa in the middle of 120 even steps of ln P; the rate is the number of the range
            double x = 2 * i / 119.0;
            along.add(new InstantaneousRate(i, 0, 1e6 * Math.exp(x), Math.min(11, Math.floor(6 * x))));
        }
        List<FiringPoints.AlongBins.Bin> bins = FiringPoints.AlongBins.of(along);
        assertThat(bins).hasSize(12);
        for (int k = 0; k < 12; k++) {
            // 0.1: a step that falls to its neighbour at an edge, of ten
            assertThat(bins.get(k).rate()).isCloseTo(k, within(0.1));
            double middle = 1e6 * Math.exp((k + 0.5) / 6);
            assertThat(bins.get(k).pressures().powerMean(1e-9)).isCloseTo(middle, within(0.01 * middle));
        }
    }

    @Test
    void aNarrowBurnIsOneRangeAndAHurriedRangeIsLeftOut() {
        List<InstantaneousRate> along = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            along.add(new InstantaneousRate(i, 0, 2e6 * Math.exp(0.079 * i / 49), 1e-3 * (1 + i % 2)));
        }
        assertThat(FiringPoints.AlongBins.of(along)).hasSize(1);
        assertThat(FiringPoints.AlongBins.of(along).get(0).rate()).isCloseTo(1.5e-3, within(1e-15));
        assertThat(FiringPoints.AlongBins.of(List.of())).isEmpty();
        assertThat(FiringPoints.AlongBins.of(along.subList(0, 1))).hasSize(1);
        // one of 51 at three times the pressure: 12 ranges, of which it has the last alone, with less than 51/12/4
        along.add(new InstantaneousRate(50, 0, 6e6, 9e-3));
        along.add(new InstantaneousRate(51, 0, 4e6, 9e-3));
        assertThat(FiringPoints.AlongBins.of(along)).hasSize(3);
        for (int i = 0; i < 50; i++) {
            along.add(new InstantaneousRate(52 + i, 0, 2e6, 1.5e-3));
        }
        // of 102 an even share is eight, and a quarter of it two
        assertThat(FiringPoints.AlongBins.of(along)).hasSize(1);
    }

    private static Trace trace(int count, DoubleUnaryOperator pressure) {
        double[] time = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            time[i] = 0.001 * i;
            values[i] = pressure.applyAsDouble(time[i]);
        }
        return Trace.of("F", time, Optional.of(values), Optional.of(values.clone()));
    }

    @Test
    void aThinnedRecordKeepsItsExtremesAndItsOrder() {
        Trace trace = trace(9_000, t -> 1e6 * (2 + Math.sin(40 * t)) + (Math.abs(t - 4.4321) < 1e-6 ? 5e6 : 0));
        TraceHistory.Samples thin = HistoryThinning.whole(trace).orElseThrow().samples();
        assertThat(thin.time().length).isBetween(590, 600);
        assertThat(thin.time()).isSorted();
        assertThat(java.util.Arrays.stream(thin.pressure()).max().orElseThrow())
                .isEqualTo(java.util.Arrays.stream(trace.pressures()).max().orElseThrow());
        assertThat(java.util.Arrays.stream(thin.pressure()).min().orElseThrow())
                .isEqualTo(java.util.Arrays.stream(trace.pressures()).min().orElseThrow());
        assertThat(thin.thrust().orElseThrow()).containsExactly(thin.pressure());
        // each of 300 stretches of 30 samples gives its lowest and its highest
        for (int s = 0; s < 300; s++) {
            double from = trace.time(30 * s);
            double to = trace.time(30 * s + 29);
            long within = java.util.Arrays.stream(thin.time())
                    .filter(t -> t >= from && t <= to)
                    .count();
            assertThat(within).as("stretch %d", s).isBetween(1L, 2L);
        }
    }

    @Test
    void anOperationIsShownWithALittleAroundIt() {
        Trace trace = trace(1_000, t -> 1e6 * (1 + t));
        TraceHistory.Samples thin = HistoryThinning.of(trace, new Operation(0.4005, 0.6005, 1e6, true))
                .orElseThrow()
                .samples();
        // 0.15 of 0.2 s before, 0.25 of it behind: from 0.3705 to 0.6505 s
        assertThat(thin.time()[0]).isCloseTo(0.371, within(1e-9));
        assertThat(thin.time()[thin.time().length - 1]).isCloseTo(0.650, within(1e-9));
        // fewer samples than stretches: all of them
        assertThat(thin.time()).hasSize(280);
        TraceHistory.Samples beyond = HistoryThinning.of(trace, new Operation(-9, 9, 1e6, true))
                .orElseThrow()
                .samples();
        assertThat(beyond.time()[0]).isZero();
        assertThat(beyond.time()[beyond.time().length - 1]).isCloseTo(0.999, within(1e-9));
    }

    @Test
    void aRiseOfStraightLinesIsTimedByItsCorners() {
        // level 0.5 MPa to 2 s, a line up to 3.5 MPa at 7 s, slowly down afterwards
        int count = 4_001;
        double[] time = new double[count];
        double[] pressure = new double[count];
        for (int i = 0; i < count; i++) {
            double t = 0.0025 * i;
            time[i] = t;
            pressure[i] = 1e6 * (t < 2 ? 0.5 : t < 7 ? 0.5 + 0.6 * (t - 2) : 3.5 - 0.05 * (t - 7));
        }
        StrandTiming timing = StrandTiming.find(time, pressure, 0).timing().orElseThrow();
        // the lines are exact; 1e-6 s is rounding of sums of thousands of megapascals
        assertThat(timing.begin()).isCloseTo(2, within(1e-6));
        assertThat(timing.end()).isCloseTo(7, within(1e-6));
        // the smoothed top lies lower by a tenth of a per cent
        assertThat(timing.rise()).isCloseTo(3e6, within(0.01e6));
        // not better than the steps of the record: 2.5 ms/sqrt(6)
        assertThat(timing.std()).isGreaterThan(0.0025 / Math.sqrt(6)).isLessThan(0.02);
    }

    @Test
    void aStrandWhoseEndIsNotInTheRecordIsNotTimed() {
        double[] time = new double[500];
        double[] rising = new double[500];
        double[] level = new double[500];
        for (int i = 0; i < 500; i++) {
            time[i] = 0.01 * i;
            rising[i] = 1e6 * (i < 100 ? 1 : 1 + 0.01 * (i - 100));
            level[i] = 1e6 + (i % 2 == 0 ? 1e3 : -1e3);
        }
        assertThat(StrandTiming.find(time, rising, 0).reason()).contains("still rises when the record ends");
        assertThat(StrandTiming.find(time, level, 1e3).reason()).contains("cannot be timed");
        assertThat(StrandTiming.find(new double[29], new double[29], 0).reason())
                .contains("only 29 samples");
    }
}
