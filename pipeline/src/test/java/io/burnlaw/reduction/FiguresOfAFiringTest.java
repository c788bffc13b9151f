package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.balance.BurnPressures;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Thrust, pressures and throat of a firing, against integrals that a pencil can do. */
class FiguresOfAFiringTest {

    private static final FiringBench.Fired FIRED =
            FiringBench.fire(FiringBench.Case.bates(4, 38e-3, 14e-3, 60e-3, 9e-3), FiringBench.law(6.5, 0.35), 31);

    private static Firing with(double throat, Optional<Measured> after, Optional<Measured> mass) {
        Firing plain = FIRED.firing();
        return new Firing(
                plain.id(),
                plain.formulation(),
                plain.trace(),
                plain.burnTime(),
                plain.pulsed(),
                plain.grain(),
                Measured.of(throat, 0.01e-3),
                after,
                plain.exitDiameter(),
                mass,
                plain.igniterGas(),
                plain.grainTemperature(),
                plain.ambientPressure(),
                plain.chamberVolume(),
                plain.setAside(),
                plain.note(),
                plain.settings(),
                plain.row());
    }

    private static Trace trace(DoubleUnaryOperator pressure, DoubleUnaryOperator thrust) {
        int n = 201;
        double[] time = new double[n];
        double[] p = new double[n];
        double[] f = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.01 * i;
            p[i] = pressure.applyAsDouble(time[i]);
            f[i] = thrust.applyAsDouble(time[i]);
        }
        return Trace.of("f", time, Optional.of(p), Optional.of(f));
    }

    @Test
    void theImpulseIsTheAreaUnderTheThrust() {
        Firing firing = with(10e-3, Optional.empty(), Optional.of(Measured.of(0.2, 0.001)));
        // 40 N/s·t from 0.25 to 1.75 s: 20·(1.75² - 0.25²) = 60 Ns; P = 2 MPa/s·t, so that C_F is 40/(2e6·A)
        ThrustFigures figures = ThrustFigures.of(trace(t -> 2e6 * t, t -> 40 * t), true, firing, 0.25, 1.75);
        assertThat(figures.totalImpulse()).isCloseTo(60, within(1e-9));
        assertThat(figures.specificImpulse().getAsDouble()).isCloseTo(60 / (0.2 * 9.80665), within(1e-9));
        assertThat(figures.thrustCoefficient().getAsDouble()).isCloseTo(20e-6 / (Math.PI / 4 * 1e-4), within(1e-9));
        // a level thrust is cut where the operation ends, between two samples
        ThrustFigures level = ThrustFigures.of(trace(t -> 3e6, t -> 50), true, firing, 0.333, 1.337);
        assertThat(level.totalImpulse()).isCloseTo(50 * 1.004, within(1e-9));
        ThrustFigures derived = ThrustFigures.of(trace(t -> 3e6, t -> 50), false, firing, 0.333, 1.337);
        assertThat(derived.thrustCoefficient()).isEmpty();
        assertThat(ThrustFigures.of(
                                trace(t -> 3e6, t -> 50), true, with(0.01, Optional.empty(), Optional.empty()), 0, 2)
                        .specificImpulse())
                .isEmpty();
    }

    @Test
    void aThroatThatGrewCountsWithItsMeanArea() {
        double before = 10e-3;
        double after = 12e-3;
        ThrustFigures figures = ThrustFigures.of(
                trace(t -> 3e6, t -> 50),
                true,
                with(before, Optional.of(Measured.of(after, 0.01e-3)), Optional.empty()),
                0.5,
                1.5);
        // mean of d² of a diameter that grows evenly: (d0² + d0 d1 + d1²)/3
        double area = Math.PI / 4 * (before * before + before * after + after * after) / 3;
        // 1e-6: a hundred midpoints
        assertThat(figures.thrustCoefficient().getAsDouble()).isCloseTo(50 / (3e6 * area), within(1e-6));
    }

    private static UniformTrace record(DoubleUnaryOperator pressure) {
        int n = 1001;
        double[] time = new double[n];
        double[] p = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.001 * i;
            p[i] = pressure.applyAsDouble(time[i]);
        }
        return UniformTrace.of(time, p, 0, 1);
    }

    @Test
    void howLongAtWhichPressure() {
        // 1 MPa for 0.6 s and 4 MPa for 0.4 s; a cell of 1 ms on its way between them
        PressureDistribution two = BurnPressures.between(record(t -> t < 0.6 ? 1e6 : 4e6), 0, 1, 1e5);
        assertThat(two.powerMean(1)).isCloseTo(2.2e6, within(0.004e6));
        assertThat(two.powerMean(1e-9)).isCloseTo(1e6 * Math.pow(4, 0.4), within(0.004e6));
        // a part of it
        PressureDistribution part = BurnPressures.between(record(t -> t < 0.6 ? 1e6 : 4e6), 0.4, 0.8, 1e5);
        assertThat(part.powerMean(1)).isCloseTo(2.5e6, within(0.01e6));
        // one pressure is one pressure, and less than the ambient counts as the ambient
        assertThat(BurnPressures.between(record(t -> 3e6), 0.2, 0.7, 1e5).powerMean(0.4))
                .isCloseTo(3e6, within(1e-3));
        assertThat(BurnPressures.between(record(t -> t < 0.5 ? 0.2e5 : 3e5), 0, 1, 1e5)
                        .powerMean(1))
                .isCloseTo(2e5, within(300.0));
        // a straight rise, whose mean is known for any exponent: [(P2^(n+1) - P1^(n+1))/((n+1)(P2 - P1))]^(1/n)
        double n = 0.4;
        double rise = Math.pow((Math.pow(5e6, n + 1) - Math.pow(1e6, n + 1)) / ((n + 1) * 4e6), 1 / n);
        assertThat(BurnPressures.between(record(t -> 1e6 + 4e6 * t), 0, 1, 1e5).powerMean(n))
                .isCloseTo(rise, within(1e-4 * rise));
    }

    private static List<Finding> throat(double measuredAfter) {
        double before = FIRED.firing().throatDiameter().value();
        Firing firing = with(
                before,
                Optional.of(Measured.of(measuredAfter * before, 0.01e-3)),
                FIRED.firing().propellantMass());
        Reduction reduction = FiringReducer.reduce(
                firing,
                FiringBench.formulation(),
                ReductionSettings.defaults(),
                new Hardware(OptionalDouble.empty(), 1.5),
                FIRED.measured(),
                FIRED.trace(),
                List.of());
        return reduction.findings().stream()
                .filter(each -> each.code() == FindingCode.THROAT_EROSION)
                .toList();
    }

    @Test
    void aThroatThatMeasuresOtherwiseAfterwardsIsTold() {
        // 9 mm: readings of 0.01 mm each differ by 0.014 mm, three times that is half a per cent
        assertThat(throat(1.003)).isEmpty();
        Finding small = throat(1.01).get(0);
        assertThat(small.message())
                .startsWith(
                        "The throat measured 9.000 mm before and 9.090 mm after the firing: its area grew by 2.0 %");
        List<Finding> large = throat(1.05);
        assertThat(large.get(0).message()).contains("9.450 mm after the firing: its area grew by 10 %");
        // it did not grow in truth: the rates drift as if it had come back, by 1/1.1025
        assertThat(large).hasSize(2);
        assertThat(large.get(1).message()).contains("shrank by another").contains("beyond what was measured");
        assertThat(throat(0.98).get(0).message()).contains("its area shrank by 4.0 %");
    }
}
