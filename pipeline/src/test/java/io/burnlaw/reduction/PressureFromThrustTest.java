package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Formulation;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PressureFromThrustTest {

    private static PressureFromThrust derive(CleanFiring clean, Formulation formulation) {
        ConditionedTrace conditioned = TraceConditioning.condition(
                clean.thrustTrace(), CleanFiring.AMBIENT, clean.firing().settings());
        return PressureFromThrust.derive(conditioned, clean.firing(), formulation);
    }

    private static double meanGauge(double[] time, double[] pressure, double from, double to) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < time.length; i++) {
            if (time[i] > from && time[i] < to) {
                sum += pressure[i] - CleanFiring.AMBIENT;
                count++;
            }
        }
        return sum / count;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void closedOnTheImpulseThePressureComesBackWithinItsUncertainty(long seed) {
        CleanFiring clean = CleanFiring.random(seed);
        PressureFromThrust derived = derive(clean, clean.formulation());
        double truth = meanGauge(
                clean.pressureTrace().times(), clean.pressureTrace().pressures(), clean.ignition(), clean.burnout());
        double seen = meanGauge(
                clean.thrustTrace().times(), derived.record().trace().pressures(), clean.ignition(), clean.burnout());
        assertThat(derived.closed()).isTrue();
        // The simulated firing was made with an efficiency of 0.92; the igniter's gas is in its impulse, not its mass.
        assertThat(derived.efficiency()).isCloseTo(0.92, within(0.02));
        assertThat(seen / truth).isCloseTo(1, within(2 * derived.scale().relativeStd()));
        assertThat(derived.findings()).extracting(Finding::code).containsExactly(FindingCode.THRUST_DERIVED);
    }

    @Test
    void withoutAStatedVelocityTheUsualEfficiencyStandsInAndIsUncertain() {
        CleanFiring clean = CleanFiring.random(11);
        Formulation known = clean.formulation();
        Formulation unknown = new Formulation(
                known.id(),
                known.title(),
                known.density(),
                true,
                Optional.empty(),
                Optional.empty(),
                known.additiveFraction(),
                known.specificHeatRatio(),
                Optional.empty());
        PressureFromThrust derived = derive(clean, unknown);
        assertThat(derived.closed()).isFalse();
        assertThat(derived.scale().relativeStd()).isGreaterThan(0.04);
        assertThat(derived.findings().get(0).message()).contains("0.920").contains("usual value");
    }

    @Test
    void aThrustColumnInTheWrongUnitDoesNotCloseAndSaysSo() {
        CleanFiring clean = CleanFiring.random(12);
        double[] pounds = clean.thrustTrace().thrusts();
        for (int i = 0; i < pounds.length; i++) {
            pounds[i] /= 4.4482216152605;
        }
        ConditionedTrace conditioned = TraceConditioning.condition(
                Trace.of("F1", clean.thrustTrace().times(), Optional.empty(), Optional.of(pounds)),
                CleanFiring.AMBIENT,
                clean.firing().settings());
        PressureFromThrust derived = PressureFromThrust.derive(conditioned, clean.firing(), clean.formulation());
        assertThat(derived.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.THRUST_DERIVED, FindingCode.IMPLAUSIBLE_CSTAR);
        assertThat(derived.findings().get(1).message()).contains("unit of the thrust column");
    }

    @Test
    void impulseSpecificImpulseAndThrustCoefficientFollowTheirDefinitions() {
        CleanFiring clean = CleanFiring.random(13);
        Trace both = Trace.of(
                "F1",
                clean.thrustTrace().times(),
                Optional.of(clean.pressureTrace().pressures()),
                Optional.of(clean.thrustTrace().thrusts()));
        double from = clean.ignition();
        double to = both.time(both.size() - 1);
        ThrustFigures figures = ThrustFigures.of(both, true, clean.firing(), from, to);
        double mass = clean.firing().propellantMass().orElseThrow().value();
        assertThat(figures.specificImpulse().orElseThrow())
                .isCloseTo(figures.totalImpulse() / mass / 9.80665, within(1e-9));
        // C_F times c* is the effective exhaust velocity; the igniter's gas and the quiet part's ambient pressure make
        // up to some per cent of the integral.
        assertThat(figures.thrustCoefficient().orElseThrow()
                        * clean.motor().gas().characteristicVelocity()
                        / 9.80665)
                .isCloseTo(
                        figures.specificImpulse().orElseThrow(),
                        within(0.06 * figures.specificImpulse().orElseThrow()));
        assertThat(ThrustFigures.of(both, false, clean.firing(), from, to).thrustCoefficient())
                .isEmpty();
    }
}
