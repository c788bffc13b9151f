package io.burnlaw.reduction.strand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Strand;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.BudgetLine;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A strand between break wires while its vessel's pressure rises in a straight line: all by hand. */
class StrandBudgetTest {

    private static final double BEGIN = 1.0;
    private static final double END = 8.5;

    private static StrandReduction.Reduced reduced(Measured length) {
        double[] time = new double[1200];
        double[] pressure = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            time[i] = i / 100.0;
            pressure[i] = 5e6 + 3e6 * Math.max(0, Math.min(1, (time[i] - BEGIN) / (END - BEGIN)));
        }
        Formulation plain = new Formulation(
                "plain",
                "Plain",
                Optional.empty(),
                true,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        Strand strand = new Strand(
                "S1",
                "plain",
                "traces/S1.csv",
                length,
                List.of(4.0, BEGIN, END),
                OptionalDouble.empty(),
                101325,
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
        return (StrandReduction.Reduced) StrandReducer.reduce(
                strand, plain, Trace.of("S1", time, Optional.of(pressure), Optional.empty()), List.of());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.35, 1, 3, -0.5})
    void thePressuresOfTheBurnHaveTheirMeans(double m) {
        double mean = Math.pow((Math.pow(8, m + 1) - Math.pow(5, m + 1)) / (3 * (m + 1)), 1 / m);
        // two hundred bins of a straight rise: the spread within a bin is lost, some 1e-6
        assertThat(reduced(Measured.of(60e-3)).point().pressures().powerMean(m)).isCloseTo(1e6 * mean, within(100.0));
    }

    @Test
    void theBudgetIsThatOfLengthAndTwoWires() {
        RatePoint point = reduced(Measured.of(60e-3, 0.12e-3)).point();
        assertThat(point.rate()).isCloseTo(8e-3, within(1e-12));
        double fromLength = 0.12 / 60;
        // each wire to within a sample of 10 ms: two rectangular errors of half of it
        double fromTime = 0.01 / Math.sqrt(6) / 7.5;
        assertThat(point.rateStd() / point.rate()).isCloseTo(Math.hypot(fromLength, fromTime), within(1e-9));
        assertThat(point.budget()).extracting(BudgetLine::source).containsExactly("length", "burn time");
        assertThat(point.budget().get(0).contribution()).isCloseTo(fromLength, within(1e-12));
        assertThat(point.budget().get(0).std()).isEqualTo(0.12e-3);
        assertThat(point.budget().get(1).contribution()).isCloseTo(fromTime, within(1e-9));
        assertThat(point.budget().get(0).share())
                .isCloseTo(fromLength * fromLength / (fromLength * fromLength + fromTime * fromTime), within(1e-6));
    }

    @Test
    void whereNothingIsStatedTheUsualUncertaintiesAreTaken() {
        StrandReduction.Reduced reduced = reduced(Measured.of(60e-3));
        assertThat(reduced.point().budget().get(0).std()).isEqualTo(0.05e-3);
        // 0.5 % of 6.5 MPa
        assertThat(reduced.point().pressureStd()).isCloseTo(0.005 * 6.5e6, within(10.0));
        assertThat(reduced.meanPressure()).isCloseTo(6.5e6, within(100.0));
    }
}
