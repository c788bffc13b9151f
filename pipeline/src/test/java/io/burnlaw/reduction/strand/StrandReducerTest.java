package io.burnlaw.reduction.strand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Strand;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.BudgetLine;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrandReducerTest {

    private static final double LENGTH = 60e-3;
    private static final double RATE = 8e-3;
    private static final double BEGIN = 1.0;

    private static final Formulation PLAIN = new Formulation(
            "plain",
            "Plain",
            Optional.empty(),
            true,
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    private static Strand strand(List<Double> wires) {
        return new Strand(
                "S1",
                "plain",
                "traces/S1.csv",
                Measured.of(LENGTH, 0.05e-3),
                wires,
                OptionalDouble.empty(),
                101325,
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
    }

    /** A closed vessel: filled, a straight rise while the strand burns, cooling afterwards. */
    private static Trace vessel(double samplesPerSecond, double rise, double noise, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double end = BEGIN + LENGTH / RATE;
        double[] time = new double[(int) (12 * samplesPerSecond)];
        double[] pressure = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            double t = time[i] = i / samplesPerSecond;
            double share = Math.max(0, Math.min(1, (t - BEGIN) / (end - BEGIN)));
            double cooling = t > end ? Math.exp(-(t - end) / 4) : 1;
            pressure[i] = 5e6 + rise * share * cooling + noise * random.nextGaussian();
        }
        return Trace.of("S1", time, Optional.of(pressure), Optional.empty());
    }

    @ParameterizedTest
    @CsvSource({"200,0.5e6,0", "200,0.5e6,3e3", "1000,1e6,10e3", "50,0.3e6,1e3", "5000,0.2e6,2e3"})
    void theRiseOfTheVesselTimesTheStrand(double samplesPerSecond, double rise, double noise) {
        for (int seed = 0; seed < 10; seed++) {
            StrandReduction reduction = StrandReducer.reduce(
                    strand(List.of()), PLAIN, vessel(samplesPerSecond, rise, noise, seed), List.of());
            StrandReduction.Reduced reduced = (StrandReduction.Reduced) reduction;
            // 0.5 %: the lines of the two opinions, with noise of 1 % of the rise; tighter than the strand's own limits
            assertThat(reduced.point().rate()).isCloseTo(RATE, within(0.005 * RATE));
            assertThat(Math.abs(reduced.point().rate() - RATE))
                    .isLessThan(3 * reduced.point().rateStd());
            assertThat(reduced.meanPressure()).isCloseTo(5e6 + rise / 2, within(0.01 * rise + noise));
        }
    }

    @Test
    void breakWiresTimeTheStrandWhateverThePressureDoes() {
        StrandReduction reduction =
                StrandReducer.reduce(strand(List.of(1.0, 4.75, 8.5)), PLAIN, vessel(100, 0, 2e3, 3), List.of());
        StrandReduction.Reduced reduced = (StrandReduction.Reduced) reduction;
        assertThat(reduced.point().rate()).isCloseTo(RATE, within(1e-9));
        assertThat(reduced.point().method()).isEqualTo("strand-wires");
        assertThat(reduced.point().source()).isEqualTo(RatePoint.Source.STRAND);
        assertThat(reduced.point().pressures().powerMean(1)).isCloseTo(5e6, within(1e3));
        assertThat(reduced.point().budget().stream()
                        .mapToDouble(BudgetLine::share)
                        .sum())
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void aVesselWhosePressureHardlyRisesAsksForBreakWires() {
        StrandReduction reduction = StrandReducer.reduce(strand(List.of()), PLAIN, vessel(200, 0, 3e3, 1), List.of());
        assertThat(reduction).isInstanceOf(StrandReduction.Rejected.class);
        assertThat(reduction.findings()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.NO_IGNITION);
            assertThat(finding.message()).contains("break wires");
        });
    }

    @Test
    void wiresOutsideTheRecordAreNamedWithTheirTimes() {
        StrandReduction reduction =
                StrandReducer.reduce(strand(List.of(1.0, 40.0)), PLAIN, vessel(100, 1e5, 0, 3), List.of());
        assertThat(reduction).isInstanceOf(StrandReduction.Rejected.class);
        assertThat(reduction.findings().get(0).message()).contains("40").contains("runs from 0 s to 11.99 s");
    }

    @Test
    void aRecordThatEndsInTheRiseIsRefused() {
        Trace whole = vessel(200, 0.5e6, 1e3, 5);
        int cut = 1000;
        Trace trace = Trace.of(
                "S1",
                java.util.Arrays.copyOf(whole.times(), cut),
                Optional.of(java.util.Arrays.copyOf(whole.pressures(), cut)),
                Optional.empty());
        StrandReduction reduction = StrandReducer.reduce(strand(List.of()), PLAIN, trace, List.of());
        assertThat(reduction).isInstanceOf(StrandReduction.Rejected.class);
        assertThat(reduction.findings().get(0).message()).contains("still rises");
    }
}
